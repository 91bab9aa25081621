/**
 * The one place where three and three-mesh-bvh are used in geometry: an index over a model's triangles, and a search that
 * goes down into a box only while what is in it can still be nearer than the best found so far.
 */
import { BufferAttribute, BufferGeometry, type Vector3 } from 'three'
import { INTERSECTED, MeshBVH, NOT_INTERSECTED } from 'three-mesh-bvh'
import type { Vec3 } from '../../plan/types'

export interface Box {
  min: { x: number; y: number; z: number }
  max: { x: number; y: number; z: number }
}

export interface TriangleIndex {
  triangles: number
  low: Vec3
  high: Vec3
  /**
   * Visits triangles, nearest boxes first. `bound` gives the least value that anything in a box can have, `best` the
   * least found so far; boxes that cannot beat it are passed over.
   */
  search: (
    bound: (box: Box) => number,
    best: () => number,
    visit: (corners: [Vec3, Vec3, Vec3]) => void,
  ) => void
}

const point = (v: Vector3): Vec3 => [v.x, v.y, v.z]

/**
 * Tells of every hundredth. The index tells of every box that it makes, a hundred thousand for a large model; each is a
 * message to the window, which heard nothing else for most of a minute.
 */
function byHundredths(progress: (share: number) => void): (share: number) => void {
  let told = -1
  return (share) => {
    const hundredth = Math.floor(100 * share)
    if (hundredth <= told) return
    told = hundredth
    progress(share)
  }
}

/** Builds the index over three corners of three coordinates for each triangle; the array itself is left as it is. */
export function triangleIndex(triangles: Float32Array, progress?: (share: number) => void): TriangleIndex {
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(triangles, 3))
  const bvh = new MeshBVH(geometry, {
    indirect: true,
    ...(progress ? { onProgress: byHundredths(progress) } : {}),
  })
  const box = geometry.boundingBox!
  return {
    triangles: triangles.length / 9,
    low: point(box.min),
    high: point(box.max),
    search: (bound, best, visit) => {
      bvh.shapecast({
        boundsTraverseOrder: (b) => bound(b),
        intersectsBounds: (b, _leaf, score) => ((score ?? bound(b)) < best() ? INTERSECTED : NOT_INTERSECTED),
        intersectsTriangle: (t) => {
          visit([point(t.a), point(t.b), point(t.c)])
          return false
        },
      })
    },
  }
}
