/** The highest point of a facet under a disc in plan. */
import type { Vec2 } from '../../plan/types'
import { contains, nearestInPolygon } from '../polygon'
import type { Plane } from '../room/types'
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
  const best = { x: 0, y: 0, z: Number.NEGATIVE_INFINITY }
  for (let i = 0; i < points.length; i++) {
    const a = points[i]!
    if (Math.hypot(a[0] - centre[0], a[1] - centre[1]) <= radius) offer(best, plane, a[0], a[1])
    offerCrossings(best, plane, a, points[(i + 1) % points.length]!, centre, radius)
  }
  return best.z > Number.NEGATIVE_INFINITY ? [best.x, best.y] : nearestInPolygon(points, centre)
}

interface Highest {
  x: number
  y: number
  z: number
}

function offer(best: Highest, plane: Plane, x: number, y: number): void {
  const z = planeAt(plane, x, y)
  if (!(z > best.z)) return
  best.x = x
  best.y = y
  best.z = z
}

/** Where a segment meets a circle: none, one or two points. Asked a thousand times a search, so without lists. */
function offerCrossings(best: Highest, plane: Plane, a: Vec2, b: Vec2, centre: Vec2, radius: number): void {
  const ex = b[0] - a[0]
  const ey = b[1] - a[1]
  const fx = a[0] - centre[0]
  const fy = a[1] - centre[1]
  const A = ex * ex + ey * ey
  const B = fx * ex + fy * ey
  const D = B * B - A * (fx * fx + fy * fy - radius * radius)
  if (D < 0 || A === 0) return
  const root = Math.sqrt(D)
  const t = (-B - root) / A
  const u = (-B + root) / A
  if (t >= 0 && t <= 1) offer(best, plane, a[0] + ex * t, a[1] + ey * t)
  if (u >= 0 && u <= 1) offer(best, plane, a[0] + ex * u, a[1] + ey * u)
}
