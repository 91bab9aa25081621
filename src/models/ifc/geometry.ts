/** Triangles of an IFC model, metres, z up: the engine hands them out in metres with y up. */
import type { FlatMesh, IfcAPI } from 'web-ifc'
import { TriangleCollector } from '../collect'
import { type RawRead, type ReadOptions, unread } from '../types'
import { withIfc } from './engine'

/** Adds the triangles of one element. Positions and normals alternate: six numbers for each corner. */
export function addElement(api: IfcAPI, model: number, mesh: FlatMesh, into: TriangleCollector): void {
  for (let i = 0; i < mesh.geometries.size(); i++) {
    const placed = mesh.geometries.get(i)
    const geometry = api.GetGeometry(model, placed.geometryExpressID)
    const vertices = api.GetVertexArray(geometry.GetVertexData(), geometry.GetVertexDataSize())
    const indices = api.GetIndexArray(geometry.GetIndexData(), geometry.GetIndexDataSize())
    into.add(vertices, 6, indices, placed.flatTransformation)
    geometry.delete()
  }
}

/** From y up back to z up, in place: x, -z, y. */
export function standUp(triangles: Float32Array): Float32Array {
  for (let i = 0; i < triangles.length; i += 3) {
    const y = triangles[i + 1]!
    triangles[i + 1] = -triangles[i + 2]!
    triangles[i + 2] = y
  }
  return triangles
}

/** Reads every element of an IFC file that has a shape. */
export async function readIfc(bytes: Uint8Array, options: ReadOptions = {}): Promise<RawRead> {
  const read = await withIfc(bytes, options.ifcEngine, (api, model) => {
    const collector = new TriangleCollector()
    api.StreamAllMeshes(model, (mesh, index, total) => {
      addElement(api, model, mesh, collector)
      options.progress?.(total > 0 ? index / total : 0, 'reading shapes')
    })
    return standUp(collector.triangles())
  })
  if (!read.ok) return read
  if (read.value.length === 0) return unread('the IFC file holds no shapes')
  return { ok: true, value: { triangles: read.value, upAxis: 'z', metresPerUnit: 1 } }
}
