/** The highest point of a facet under a disc in plan. */
import type { Vec2 } from '../../plan/types'
import { contains, nearestInPolygon } from '../polygon'
import { planeAt } from './facet'
import type { Facet } from './types'

/**
 * The point of the facet within `radius` of `centre` where its plane is highest. A plane is highest at the disc's own
 * highest point if the facet holds it, otherwise at a corner inside the disc or where an edge leaves it. Where rounding
 * leaves none of these, the nearest point of the facet.
 */
export function highestUnderDisc(facet: Facet, centre: Vec2, radius: number): Vec2 {
  const { plane, points } = facet
  const slope = Math.hypot(plane.gx, plane.gy)
  if (slope > 0) {
    const peak: Vec2 = [centre[0] + (plane.gx / slope) * radius, centre[1] + (plane.gy / slope) * radius]
    if (contains(points, peak)) return peak
  }
  let best: Vec2 | null = null
  let most = Number.NEGATIVE_INFINITY
  const offer = (p: Vec2): void => {
    const z = planeAt(plane, p[0], p[1])
    if (z > most) [most, best] = [z, p]
  }
  for (let i = 0; i < points.length; i++) {
    const a = points[i]!
    if (Math.hypot(a[0] - centre[0], a[1] - centre[1]) <= radius) offer(a)
    for (const p of crossings(a, points[(i + 1) % points.length]!, centre, radius)) offer(p)
  }
  return best ?? nearestInPolygon(points, centre)
}

/** Where a segment meets a circle: none, one or two points. */
function crossings(a: Vec2, b: Vec2, centre: Vec2, radius: number): Vec2[] {
  const ex = b[0] - a[0]
  const ey = b[1] - a[1]
  const fx = a[0] - centre[0]
  const fy = a[1] - centre[1]
  const A = ex * ex + ey * ey
  const B = fx * ex + fy * ey
  const D = B * B - A * (fx * fx + fy * fy - radius * radius)
  if (D < 0 || A === 0) return []
  const root = Math.sqrt(D)
  return [(-B - root) / A, (-B + root) / A]
    .filter((t) => t >= 0 && t <= 1)
    .map((t): Vec2 => [a[0] + ex * t, a[1] + ey * t])
}
