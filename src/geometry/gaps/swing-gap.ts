/**
 * The least vertical distance between one swing and one facet, exactly. Feet at t along the swing stand at F(t) with
 * their underside at z - sqrt(R^2 - t^2); the disc of the body about F shares plan area with the facet where F is within
 * its half-width; there the facet's highest point under the disc counts. That point's elevation is concave in F, the
 * underside convex in t: their difference is convex, so that its least value is found by narrowing an interval.
 */
import type { Vec2 } from '../../plan/types'
import { contains, nearestInPolygon } from '../polygon'
import type { Slice } from '../room/types'
import { planeAt } from './facet'
import { highestUnderDisc } from './highest'
import { leastOf } from './least'
import type { Facet } from './types'

export interface SwingGap {
  gap: number
  at: [number, number, number]
}

/** Least gap between a swing and a facet, m, if it is below `limit`; else null. */
export function swingGap(s: Slice, side: number, facet: Facet, limit: number): SwingGap | null {
  if (s.z - s.radius - facet.top >= limit) return null
  const range = meetingRange(s, side, facet.points)
  if (!range) return null
  const from = Math.max(range[0], -s.reach)
  const to = Math.min(range[1], s.reach)
  if (from > to) return null
  const nearest = Math.min(Math.max(0, from), to)
  const bound = underAt(s, nearest) - facet.top
  if (bound >= limit) return null
  if (facet.plane.gx === 0 && facet.plane.gy === 0) return level(s, facet, nearest, bound)
  const whole = overPlane(s, side, facet, from, to)
  if (whole.gap >= limit) return null
  if (contains(facet.points, [whole.at[0], whole.at[1]])) return whole
  const t = leastPlace(s, side, facet, from, to)
  const high = highestAt(s, side, facet, t)
  const gap = underAt(s, t) - high.z
  return gap < limit ? { gap, at: [high.x, high.y, high.z] } : null
}

const underAt = (s: Slice, t: number): number => s.z - Math.sqrt(Math.max(0, s.radius * s.radius - t * t))

function level(s: Slice, facet: Facet, t: number, gap: number): SwingGap {
  const p = nearestInPolygon(facet.points, [s.x + t * s.dx, s.y + t * s.dy])
  return { gap, at: [p[0], p[1], facet.top] }
}

/** To the facet's whole plane, sloping: no more than to the facet, and the same where the place lies in it. */
function overPlane(s: Slice, side: number, { plane }: Facet, from: number, to: number): SwingGap {
  const slope = Math.hypot(plane.gx, plane.gy)
  const rise = plane.gx * s.dx + plane.gy * s.dy
  const t = Math.min(to, Math.max(from, (s.radius * rise) / Math.hypot(1, rise)))
  const x = s.x + t * s.dx + (plane.gx / slope) * side
  const y = s.y + t * s.dy + (plane.gy / slope) * side
  const z = planeAt(plane, x, y)
  return { gap: underAt(s, t) - z, at: [x, y, z] }
}

/** Where the gap is least over the places of the swing at which the facet lies under it. */
function leastPlace(s: Slice, side: number, facet: Facet, from: number, to: number): number {
  const value = (t: number): number => underAt(s, t) - highestAt(s, side, facet, t).z
  const t = leastOf(value, from, to)
  return [from, to, t].reduce((best, t) => (value(t) < value(best) ? t : best))
}

function highestAt(s: Slice, side: number, facet: Facet, t: number): { x: number; y: number; z: number } {
  const f: Vec2 = [s.x + t * s.dx, s.y + t * s.dy]
  const p = highestUnderDisc(facet, f, side)
  return { x: p[0], y: p[1], z: planeAt(facet.plane, p[0], p[1]) }
}

/**
 * The t at which F(t) is within `side` of a convex polygon: the polygon widened by a disc is convex and bounded by its
 * shifted edges and by arcs about its corners, so that the least and the greatest crossing bound the range.
 */
export function meetingRange(s: Slice, side: number, points: Vec2[]): [number, number] | null {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (let i = 0; i < points.length; i++) {
    const a = points[i]!
    const b = points[(i + 1) % points.length]!
    const px = a[0] - s.x
    const py = a[1] - s.y
    const along = px * s.dx + py * s.dy
    const across = py * s.dx - px * s.dy
    const half = side * side - across * across
    if (half >= 0) {
      const w = Math.sqrt(half)
      if (along - w < low) low = along - w
      if (along + w > high) high = along + w
    }
    const t = edgeCrossing(s, side, a, b)
    if (t !== null) {
      if (t < low) low = t
      if (t > high) high = t
    }
  }
  return low <= high ? [low, high] : null
}

/** Where the swing's line crosses the edge a -> b shifted outwards by `side`; null where it does not. */
function edgeCrossing(s: Slice, side: number, a: Vec2, b: Vec2): number | null {
  const ex = b[0] - a[0]
  const ey = b[1] - a[1]
  const size = Math.hypot(ex, ey)
  if (size === 0) return null
  const ox = a[0] + (ey / size) * side - s.x
  const oy = a[1] - (ex / size) * side - s.y
  const det = s.dx * ey - s.dy * ex
  if (Math.abs(det) < 1e-12 * size) return null
  const share = (s.dy * ox - s.dx * oy) / det
  return share < 0 || share > 1 ? null : (ox * ey - oy * ex) / det
}
