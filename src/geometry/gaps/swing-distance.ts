/**
 * The least distance in any direction between one swing and one facet. Feet at t along the swing stand at F(t), their
 * underside at u(t) = z - sqrt(R^2 - t^2), and what is above that place up to the girder's top belongs to the room. A
 * point Q of the facet is hypot(max(0, |Q - F| - side), max(0, u - z(Q))) away: convex in t and Q together. What a swing
 * sweeps is convex too, and so is a facet: whatever direction one looks in, they are no nearer than they are apart in that
 * direction (`apartIn`). Steps to and fro between the two give a distance and a direction; where the two agree, that is
 * the least distance, and where the direction says that it cannot be below the limit, nothing more is looked at. Where
 * neither comes soon, intervals are narrowed, one inside the other.
 */
import type { Vec2, Vec3 } from '../../plan/types'
import { nearestInPolygon, nearestOnSegment } from '../polygon'
import type { Slice } from '../room/types'
import { type DiscDistance, discToFacet } from './disc-distance'
import { leastOf } from './least'
import type { Facet } from './types'

export interface SwingDistance {
  distance: number
  /** On the facet. */
  at: Vec3
  /** Unit direction from the room to that place, never upwards; null where they touch. */
  toward: Vec3 | null
}

/** To what a distance is taken as found, m: the most that it may lie above the least one. */
const AGREED = 1e-6
const STEPS = 6

/** Least distance between a swing and a facet, m, if it is below `limit`; else null. */
export function swingDistance(s: Slice, side: number, facet: Facet, limit: number): SwingDistance | null {
  let t = startOn(s, facet)
  for (let i = 0; i < STEPS; i++) {
    const near = discToFacet(feetAt(s, t), underAt(s, t), side, facet)
    t = nearestPlace(s, side, near.at)
    const found = withDirection(s, side, t, near.at)
    const least = Math.max(0, ...squared(found, facet).map((n) => apartIn(n, s, side, facet)))
    if (least >= limit) return null
    if (found.distance - least < AGREED) return found.distance < limit ? found : null
  }
  return narrowed(s, side, facet, limit)
}

/** The direction that was found, and the same made square to the facet and to the edges on which its place lies. */
function squared({ toward, at }: SwingDistance, { points, plane }: Facet): Vec3[] {
  if (!toward) return []
  const out: Vec3[] = [toward]
  const size = Math.hypot(plane.gx, plane.gy, 1)
  if (points.length > 2) out.push([plane.gx / size, plane.gy / size, -1 / size])
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length]!
    const [x, y] = nearestOnSegment(a, b, [at[0], at[1]])
    if (Math.hypot(x - at[0], y - at[1]) > 1e-9) return
    const [ex, ey] = [b[0] - a[0], b[1] - a[1]]
    const across = without(toward, [ex, ey, plane.gx * ex + plane.gy * ey])
    if (across && across[2] <= 0) out.push(across)
  })
  return out
}

/** A direction without its part along another, of unit length; null where nothing remains. */
function without(n: Vec3, e: Vec3): Vec3 | null {
  const k = (n[0] * e[0] + n[1] * e[1] + n[2] * e[2]) / (e[0] * e[0] + e[1] * e[1] + e[2] * e[2])
  const [x, y, z] = [n[0] - k * e[0], n[1] - k * e[1], n[2] - k * e[2]]
  const size = Math.hypot(x, y, z)
  return size > 1e-9 ? [x / size, y / size, z / size] : null
}

/** By narrowing intervals alone: for what steps to and fro come to slowly, as along an edge. */
function narrowed(s: Slice, side: number, facet: Facet, limit: number): SwingDistance | null {
  const at = (t: number): DiscDistance => discToFacet(feetAt(s, t), underAt(s, t), side, facet)
  const places = [leastOf((x) => at(x).distance, -s.reach, s.reach), -s.reach, s.reach]
  const t = places.reduce((best, x) => (at(x).distance < at(best).distance ? x : best))
  const found = at(t)
  return found.distance < limit ? withDirection(s, side, t, found.at) : null
}

/**
 * How far apart a swing and a facet are in a direction that does not point upwards, m: the least of n.Q over the facet less
 * the most of n.P over what the swing sweeps. Their distance is no less.
 */
export function apartIn(n: Vec3, s: Slice, side: number, facet: Facet): number {
  return leastIn(n, facet) - mostIn(n, s) - side * Math.sqrt(n[0] * n[0] + n[1] * n[1])
}

/** The least of n.Q over a facet. */
export function leastIn(n: Vec3, { points, plane }: Facet): number {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < points.length; i++) {
    const p = points[i]!
    const at = n[0] * p[0] + n[1] * p[1] + n[2] * (plane.z0 + plane.gx * p[0] + plane.gy * p[1])
    if (at < least) least = at
  }
  return least
}

/** The most of n.P over a swing without the body about it, n not upwards: where the arc is square to n, or an end of it. */
export function mostIn(n: Vec3, s: Slice): number {
  const along = n[0] * s.dx + n[1] * s.dy
  const size = Math.sqrt(along * along + n[2] * n[2])
  const free = size > 0 ? (s.radius * along) / size : 0
  const t = Math.min(s.reach, Math.max(-s.reach, free))
  return (
    n[0] * s.x +
    n[1] * s.y +
    n[2] * s.z +
    along * t -
    n[2] * Math.sqrt(Math.max(0, s.radius * s.radius - t * t))
  )
}

const underAt = (s: Slice, t: number): number => s.z - Math.sqrt(Math.max(0, s.radius * s.radius - t * t))

const feetAt = (s: Slice, t: number): Vec2 => [s.x + t * s.dx, s.y + t * s.dy]

/** Where on the swing to begin: beside the facet's nearest point in plan to the swing's middle. */
function startOn(s: Slice, { points }: Facet): number {
  const [x, y] = nearestInPolygon(points, [s.x, s.y])
  return Math.min(s.reach, Math.max(-s.reach, (x - s.x) * s.dx + (y - s.y) * s.dy))
}

/** Where on the swing a point is nearest. */
function nearestPlace(s: Slice, side: number, at: Vec3): number {
  const t = leastOf((x) => toPoint(s, side, at, x), -s.reach, s.reach)
  const far = t < 0 ? -s.reach : s.reach
  return toPoint(s, side, at, far) < toPoint(s, side, at, t) ? far : t
}

function toPoint(s: Slice, side: number, [x, y, z]: Vec3, t: number): number {
  const px = x - s.x - t * s.dx
  const py = y - s.y - t * s.dy
  const beside = Math.max(0, Math.sqrt(px * px + py * py) - side)
  const above = Math.max(0, underAt(s, t) - z)
  return Math.sqrt(beside * beside + above * above)
}

function withDirection(s: Slice, side: number, t: number, at: Vec3): SwingDistance {
  const [fx, fy] = feetAt(s, t)
  const [px, py] = [at[0] - fx, at[1] - fy]
  const flat = Math.hypot(px, py)
  const beside = Math.max(0, flat - side)
  const above = Math.max(0, underAt(s, t) - at[2])
  const distance = Math.hypot(beside, above)
  if (distance === 0) return { distance, at, toward: null }
  const out = flat > 0 ? beside / flat / distance : 0
  return { distance, at, toward: [px * out, py * out, -above / distance] }
}
