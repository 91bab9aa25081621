/** Models as obstacles: triangles that were read, indexed once, and measured wherever they stand. */
import type { MeshObstacle } from '../../plan/types'
import type { Room } from '../room/types'
import { lidAt } from '../room/underside'
import { type TriangleIndex, triangleIndex } from './bvh'
import { facetsOf } from './facet'
import { footingOf } from './footing'
import { isOverLid, nearestInPlan, nearestToModel } from './nearest-mesh'
import { type Placement, placementOf, roomInModel, toPlan } from './placed-room'
import { gapToFacet } from './room-gap'
import { ABOVE, type Measured, type MeshTarget } from './target'
import type { GapPoint } from './types'

/** A model file as read: three corners of three coordinates for each triangle, in its own units and axes. */
export interface ModelData {
  triangles: Float32Array
  /** sha256 of the file, hexadecimal. */
  hash?: string
}

export type ReadModel = { ok: true; value: ModelData } | { ok: false; why: string }

const indexed = new WeakMap<Float32Array, Map<string, TriangleIndex>>()

/** The index of a model with z up; built once for its triangles, with progress from 0 to 1. */
export function modelIndex(
  triangles: Float32Array,
  upAxis: 'y' | 'z' = 'z',
  progress?: (share: number) => void,
): TriangleIndex {
  const known = indexed.get(triangles) ?? new Map<string, TriangleIndex>()
  indexed.set(triangles, known)
  const found = known.get(upAxis) ?? triangleIndex(upAxis === 'y' ? zUp(triangles) : triangles, progress)
  known.set(upAxis, found)
  return found
}

/** From y up to z up: x, -z, y. */
function zUp(triangles: Float32Array): Float32Array {
  const out = new Float32Array(triangles.length)
  for (let i = 0; i < out.length; i += 3) {
    out[i] = triangles[i]!
    out[i + 1] = -triangles[i + 2]!
    out[i + 2] = triangles[i + 1]!
  }
  return out
}

const contents = new WeakMap<Float32Array, number>()
let counted = 0

/** A number that stands for these triangles as long as they live. */
function contentOf(triangles: Float32Array): number {
  const known = contents.get(triangles) ?? ++counted
  contents.set(triangles, known)
  return known
}

/** A placed model as something to measure, or why it cannot be. A file that is not the one placed is not known. */
export function meshTarget(mesh: MeshObstacle, read: ReadModel | undefined): MeshTarget {
  if (!read) return { ok: false, why: `the model file ${mesh.file} was not read` }
  if (!read.ok) return { ok: false, why: read.why }
  const { triangles, hash } = read.value
  if (triangles.length < 9) return { ok: false, why: `the model file ${mesh.file} has no triangles` }
  if (mesh.fileHash && hash && mesh.fileHash !== hash) {
    return {
      ok: false,
      why: `the model file ${mesh.file} is not the one that was placed: look at it and place it again`,
    }
  }
  const placement = placementOf(mesh)
  const inModel = remembered((room) => roomInModel(room, placement))
  const index = modelIndex(triangles, mesh.upAxis)
  return {
    ok: true,
    content: contentOf(triangles),
    measure: (room) => measureModel(inModel(room), index, placement),
    nearest: (room, than) => nearestToModel(inModel(room), index, placement, than),
  }
}

/** Each room is seen from a model once: what is found out about it there serves both distances. */
function remembered(see: (room: Room) => Room): (room: Room) => Room {
  const seen = new WeakMap<Room, Room>()
  return (room) => {
    const own = seen.get(room) ?? see(room)
    seen.set(room, own)
    return own
  }
}

/**
 * Measures a placed model against a room in its coordinates. Triangles that lie wholly above the plane of the line's girder do not count: no
 * fall comes down on them.
 */
function measureModel(own: Room, index: TriangleIndex, placement: Placement): Measured {
  const footing = footingOf(own)
  let best: GapPoint | null = null
  index.search(
    (box) =>
      isOverLid(own, box)
        ? Number.POSITIVE_INFINITY
        : footing.lowestOver(box.min.x, box.min.y, box.max.x, box.max.y) - box.max.z,
    () => best?.gap ?? Number.POSITIVE_INFINITY,
    (corners) => {
      if (corners.every((p) => p[2] >= lidAt(own, p[0], p[1]))) return
      for (const facet of facetsOf(corners)) best = gapToFacet(own, facet, best) ?? best
    },
  )
  const found = best as GapPoint | null
  if (!found) {
    const beside = nearestInPlan(own, index, placement)
    return beside?.distance === 0 ? { point: null, beside: null, note: ABOVE } : { point: null, beside }
  }
  const at = toPlan(placement, found.at)
  return { point: { ...found, gap: found.gap * placement.scale, at }, beside: null }
}
