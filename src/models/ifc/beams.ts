/** The beams of an IFC model: what can become a girder, with its name and its triangles. */
import {
  IFCBEAM,
  IFCBEAMSTANDARDCASE,
  IFCELEMENTASSEMBLY,
  IFCMEMBER,
  IFCMEMBERSTANDARDCASE,
  type IfcAPI,
} from 'web-ifc'
import { TriangleCollector } from '../collect'
import type { ReadOptions } from '../types'
import { withIfc } from './engine'
import { addElement, standUp } from './geometry'

export interface IfcBeam {
  /** The element's number in the file. */
  id: number
  name: string
  kind: 'beam' | 'member' | 'assembly'
  /** Metres, z up. */
  triangles: Float32Array
}

const KINDS: [number, IfcBeam['kind']][] = [
  [IFCBEAM, 'beam'],
  [IFCBEAMSTANDARDCASE, 'beam'],
  [IFCMEMBER, 'member'],
  [IFCMEMBERSTANDARDCASE, 'member'],
  [IFCELEMENTASSEMBLY, 'assembly'],
]

/** Every beam and member of an IFC file that has a shape. */
export async function readBeams(
  bytes: Uint8Array,
  options: ReadOptions = {},
): Promise<{ ok: true; value: IfcBeam[] } | { ok: false; why: string }> {
  const read = await withIfc(bytes, options.ifcEngine, (api, model) =>
    KINDS.flatMap(([type, kind]) => beamsOf(api, model, type, kind)),
  )
  if (!read.ok) return read
  if (read.value.length === 0) return { ok: false, why: 'the IFC file has no beams or members with a shape' }
  return read
}

function beamsOf(api: IfcAPI, model: number, type: number, kind: IfcBeam['kind']): IfcBeam[] {
  const ids = api.GetLineIDsWithType(model, type)
  const found: IfcBeam[] = []
  for (let i = 0; i < ids.size(); i++) {
    const id = ids.get(i)
    const collector = new TriangleCollector()
    const mesh = api.GetFlatMesh(model, id)
    addElement(api, model, mesh, collector)
    if (collector.count > 0)
      found.push({ id, name: nameOf(api, model, id), kind, triangles: standUp(collector.triangles()) })
  }
  return found
}

function nameOf(api: IfcAPI, model: number, id: number): string {
  const line = api.GetLine(model, id) as { Name?: { value?: unknown }; Tag?: { value?: unknown } } | null
  const name = line?.Name?.value ?? line?.Tag?.value
  return typeof name === 'string' && name.trim() !== '' ? name.trim() : `element ${id}`
}
