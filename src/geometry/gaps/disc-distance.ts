/** The least distance between a facet and a level disc with all that is above it: feet at one place of a swing. */
import type { Vec2, Vec3 } from '../../plan/types'
import { contains, nearestInPolygon, nearestOnSegment } from '../polygon'
import { planeAt } from './facet'
import { leastOf } from './least'
import type { Facet } from './types'

export interface DiscDistance {
  distance: number
  /** On the facet. */
  at: Vec3
}

/** From the facet to a disc of radius `side` about f at elevation `under` and everything above it, m. */
export function discToFacet(f: Vec2, under: number, side: number, facet: Facet): DiscDistance {
  const { points, plane } = facet
  const measured = (q: Vec2): DiscDistance => {
    const z = planeAt(plane, q[0], q[1])
    const beside = Math.max(0, Math.hypot(q[0] - f[0], q[1] - f[1]) - side)
    return { distance: Math.hypot(beside, Math.max(0, under - z)), at: [q[0], q[1], z] }
  }
  const slope = Math.hypot(plane.gx, plane.gy)
  if (slope === 0) return measured(nearestInPolygon(points, f))
  const inner = uphill(f, under - planeAt(plane, f[0], f[1]), side, facet, slope)
  if (contains(points, inner)) return measured(inner)
  return alongEdges(f, under, side, facet, measured)
}

/** Of the whole plane the place nearest to the disc: uphill from its middle, past its rim where the plane lies lower. */
function uphill(f: Vec2, above: number, side: number, { plane }: Facet, slope: number): Vec2 {
  const rim = above - slope * side
  const far =
    rim > 0 ? side + (slope * rim) / (1 + slope * slope) : Math.min(side, Math.max(0, above / slope))
  return [f[0] + (plane.gx / slope) * far, f[1] + (plane.gy / slope) * far]
}

function alongEdges(
  f: Vec2,
  under: number,
  side: number,
  { points, top }: Facet,
  measured: (q: Vec2) => DiscDistance,
): DiscDistance {
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
