/** Where a ray comes nearest to what can be dragged along: an axis, a level plane, a set of points. */
import { Plane, type Ray, Vector3 } from 'three'
import type { Vec3 } from '../../plan/types'

/**
 * Distance along an axis (from `origin` in unit direction `along`) of the point nearest to the ray; null where the ray
 * runs nearly along the axis and the answer would jump.
 */
export function alongAxis(ray: Ray, origin: Vec3, along: Vec3): number | null {
  const u = new Vector3(...along)
  const w = new Vector3(...origin).sub(ray.origin)
  const b = u.dot(ray.direction)
  const denominator = 1 - b * b
  if (denominator < 1e-3) return null
  return (b * ray.direction.dot(w) - u.dot(w)) / denominator
}

/** Where the ray meets the level plane at `elevation`; null where it runs away from it. */
export function onLevel(ray: Ray, elevation: number): Vec3 | null {
  const hit = ray.intersectPlane(new Plane(new Vector3(0, 0, 1), -elevation), new Vector3())
  return hit && [hit.x, hit.y, hit.z]
}

/** Index of the point nearest to the ray; -1 of no points. */
export function nearestPoint(ray: Ray, points: readonly Vec3[]): number {
  let best = -1
  let least = Number.POSITIVE_INFINITY
  points.forEach((p, i) => {
    const d = ray.distanceSqToPoint(new Vector3(...p))
    if (d < least) [best, least] = [i, d]
  })
  return best
}
