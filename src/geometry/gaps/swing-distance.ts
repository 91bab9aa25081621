/**
 * The least distance in any direction between one swing and one facet. Feet at t along the swing stand at F(t), their
 * underside at u(t) = z - sqrt(R^2 - t^2), and what is above that place up to the girder's top belongs to the room. A
 * point Q of the facet is hypot(max(0, |Q - F| - side), max(0, u - z(Q))) away: convex in t and Q together, so that its
 * least value is found by narrowing intervals, one inside the other.
 */
import type { Vec2, Vec3 } from '../../plan/types'
import { contains, nearestInPolygon, nearestOnSegment } from '../polygon'
import type { Slice } from '../room/types'
import { planeAt } from './facet'
import type { Facet } from './types'

export interface SwingDistance {
  distance: number
  /** On the facet. */
  at: Vec3
}

/** To what t and Q are found, m. */
const CLOSE = 1e-4
const SHRINK = (Math.sqrt(5) - 1) / 2

/** Least distance between a swing and a facet, m, if it is below `limit`; else null. */
export function swingDistance(s: Slice, side: number, facet: Facet, limit: number): SwingDistance | null {
  const at = (t: number): SwingDistance =>
    discDistance([s.x + t * s.dx, s.y + t * s.dy], underAt(s, t), side, facet)
  const t = leastOf((x) => at(x).distance, -s.reach, s.reach)
  const found = [-s.reach, s.reach].map(at).reduce((a, b) => (b.distance < a.distance ? b : a), at(t))
  return found.distance < limit ? found : null
}

const underAt = (s: Slice, t: number): number => s.z - Math.sqrt(Math.max(0, s.radius * s.radius - t * t))

/** Golden-section search for the place of the least of a convex function. */
function leastOf(value: (x: number) => number, from: number, to: number): number {
  let [a, b] = [from, to]
  let [p, q] = [b - SHRINK * (b - a), a + SHRINK * (b - a)]
  let [vp, vq] = [value(p), value(q)]
  while (b - a > CLOSE) {
    if (vp < vq) {
      ;[b, q, vq] = [q, p, vp]
      p = b - SHRINK * (b - a)
      vp = value(p)
    } else {
      ;[a, p, vp] = [p, q, vq]
      q = a + SHRINK * (b - a)
      vq = value(q)
    }
  }
  return (a + b) / 2
}

/** From the facet to a disc of radius `side` about F at elevation `under` and everything above it. */
function discDistance(f: Vec2, under: number, side: number, facet: Facet): SwingDistance {
  const { points, plane } = facet
  const measured = (q: Vec2): SwingDistance => {
    const z = planeAt(plane, q[0], q[1])
    const beside = Math.max(0, Math.hypot(q[0] - f[0], q[1] - f[1]) - side)
    return { distance: Math.hypot(beside, Math.max(0, under - z)), at: [q[0], q[1], z] }
  }
  const slope = Math.hypot(plane.gx, plane.gy)
  if (slope === 0) return measured(nearestInPolygon(points, f))
  const inner = uphill(f, under - planeAt(plane, f[0], f[1]), side, facet, slope)
  if (contains(points, inner)) return measured(inner)
  return edgeDistance(f, under, side, facet, measured)
}

/** Of the whole plane the place nearest to the disc: uphill from its middle, past its rim where the plane lies lower. */
function uphill(f: Vec2, above: number, side: number, { plane }: Facet, slope: number): Vec2 {
  const rim = above - slope * side
  const far =
    rim > 0 ? side + (slope * rim) / (1 + slope * slope) : Math.min(side, Math.max(0, above / slope))
  return [f[0] + (plane.gx / slope) * far, f[1] + (plane.gy / slope) * far]
}

function edgeDistance(
  f: Vec2,
  under: number,
  side: number,
  { points, top }: Facet,
  measured: (q: Vec2) => SwingDistance,
): SwingDistance {
  let best = measured(points[0]!)
  const low = Math.max(0, under - top)
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length]!
    const near = nearestOnSegment(a, b, f)
    const least = Math.hypot(Math.max(0, Math.hypot(near[0] - f[0], near[1] - f[1]) - side), low)
    if (least >= best.distance) return
    const along = (x: number): Vec2 => [a[0] + (b[0] - a[0]) * x, a[1] + (b[1] - a[1]) * x]
    const size = Math.hypot(b[0] - a[0], b[1] - a[1])
    const place = leastOf((x) => measured(along(x / size)).distance, 0, size) / size
    for (const x of [0, 1, Number.isFinite(place) ? place : 0]) {
      const found = measured(along(x))
      if (found.distance < best.distance) best = found
    }
  })
  return best
}
