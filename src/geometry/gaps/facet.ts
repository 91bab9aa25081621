/** Facets: convex pieces of an obstacle's upper side. */
import type { Vec2, Vec3 } from '../../plan/types'
import { counterClockwise, doubleArea } from '../polygon'
import type { Plane } from '../room/types'
import type { Facet, Sweep } from './types'

/** A level facet. */
export function levelFacet(points: Vec2[], elevation: number, sweep?: Sweep): Facet {
  const plane = { z0: elevation, gx: 0, gy: 0 }
  return { points: counterClockwise(points), plane, top: elevation, ...(sweep ? { sweep } : {}) }
}

/** Elevation of a plane at a point in plan, m. */
export const planeAt = (plane: Plane, x: number, y: number): number => plane.z0 + plane.gx * x + plane.gy * y

/**
 * The facet of a flat convex polygon in space: one that stands upright, or nearly, becomes the segments that bound it,
 * and so loses nothing of its upper edge.
 */
export function facetsOf(corners: Vec3[], sweep?: Sweep): Facet[] {
  const flat = corners.map((p): Vec2 => [p[0], p[1]])
  const plane = planeOf(corners)
  if (!plane) return corners.map((p, i) => segmentFacet(p, corners[(i + 1) % corners.length]!, sweep))
  const top = Math.max(...corners.map((p) => p[2]))
  return [{ points: counterClockwise(flat), plane, top, ...(sweep ? { sweep } : {}) }]
}

/** The plane of a flat polygon as elevations, or null where it is so steep that its plan area says nothing. */
function planeOf(corners: Vec3[]): Plane | null {
  const n = normalOf(corners)
  const size = Math.hypot(n[0], n[1], n[2])
  if (Math.abs(n[2]) <= 1e-6 * size || Math.abs(doubleArea(corners.map((p) => [p[0], p[1]]))) < 1e-14)
    return null
  const p = corners[0]!
  const [gx, gy] = [-n[0] / n[2], -n[1] / n[2]]
  return { z0: p[2] - gx * p[0] - gy * p[1], gx, gy }
}

/** Normal of a polygon, twice its area long (Newell's sum). */
function normalOf(corners: Vec3[]): Vec3 {
  const n: Vec3 = [0, 0, 0]
  corners.forEach((p, i) => {
    const q = corners[(i + 1) % corners.length]!
    n[0] += (p[1] - q[1]) * (p[2] + q[2])
    n[1] += (p[2] - q[2]) * (p[0] + q[0])
    n[2] += (p[0] - q[0]) * (p[1] + q[1])
  })
  return n
}

function segmentFacet(a: Vec3, b: Vec3, sweep?: Sweep): Facet {
  const ex = b[0] - a[0]
  const ey = b[1] - a[1]
  const size = ex * ex + ey * ey
  const top = Math.max(a[2], b[2])
  const extra = sweep ? { sweep } : {}
  // An upright edge is its upper end.
  if (size < 1e-18) {
    return { points: [[a[0], a[1]]], plane: { z0: top, gx: 0, gy: 0 }, top, ...extra }
  }
  const rate = (b[2] - a[2]) / size
  const plane = { z0: a[2] - rate * (ex * a[0] + ey * a[1]), gx: rate * ex, gy: rate * ey }
  return {
    points: [
      [a[0], a[1]],
      [b[0], b[1]],
    ],
    plane,
    top,
    ...extra,
  }
}
