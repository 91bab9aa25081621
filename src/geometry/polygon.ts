/** Convex polygons in plan, counter-clockwise, as lists of points. */
import type { Vec2 } from '../plan/types'

const cross = (a: Vec2, b: Vec2, p: Vec2): number =>
  (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])

/** Twice the signed area, m2; positive counter-clockwise. */
export function doubleArea(points: Vec2[]): number {
  let sum = 0
  for (let i = 0; i < points.length; i++) {
    const a = points[i]!
    const b = points[(i + 1) % points.length]!
    sum += a[0] * b[1] - a[1] * b[0]
  }
  return sum
}

/** The same polygon counter-clockwise. */
export const counterClockwise = (points: Vec2[]): Vec2[] =>
  doubleArea(points) < 0 ? [...points].reverse() : points

/** What of a convex polygon lies to the left of the directed edge a -> b (right: `side` -1). */
function clipByEdge(points: Vec2[], a: Vec2, b: Vec2, side: 1 | -1 = 1): Vec2[] {
  const kept: Vec2[] = []
  for (let i = 0; i < points.length; i++) {
    const p = points[i]!
    const q = points[(i + 1) % points.length]!
    const cp = cross(a, b, p) * side
    const cq = cross(a, b, q) * side
    if (cp >= 0) kept.push(p)
    if (cp * cq < 0) {
      const t = cp / (cp - cq)
      kept.push([p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t])
    }
  }
  return kept
}

/** What of one convex polygon lies outside another, as convex pieces; slivers under 1 mm2 are dropped. */
export function subtract(points: Vec2[], hole: Vec2[]): Vec2[][] {
  const pieces: Vec2[][] = []
  let rest = points
  for (let i = 0; i < hole.length && rest.length > 2; i++) {
    const a = hole[i]!
    const b = hole[(i + 1) % hole.length]!
    const outside = clipByEdge(rest, a, b, -1)
    if (outside.length > 2 && Math.abs(doubleArea(outside)) > 2e-6) pieces.push(outside)
    rest = clipByEdge(rest, a, b)
  }
  return pieces
}

/** The nearest point of a segment to p. */
export function nearestOnSegment(a: Vec2, b: Vec2, p: Vec2): Vec2 {
  const ex = b[0] - a[0]
  const ey = b[1] - a[1]
  const size = ex * ex + ey * ey
  const t = size > 0 ? Math.min(1, Math.max(0, ((p[0] - a[0]) * ex + (p[1] - a[1]) * ey) / size)) : 0
  return [a[0] + ex * t, a[1] + ey * t]
}

/** Whether p lies in a convex polygon or on its edge. A polygon of fewer than three points holds nothing. */
export function contains(points: Vec2[], p: Vec2): boolean {
  if (points.length < 3) return false
  for (let i = 0; i < points.length; i++) {
    if (cross(points[i]!, points[(i + 1) % points.length]!, p) < 0) return false
  }
  return true
}

/** The nearest point of a convex polygon (or segment, or point) to p: p itself where it lies inside. */
export function nearestInPolygon(points: Vec2[], p: Vec2): Vec2 {
  if (contains(points, p)) return p
  let best: Vec2 = points[0]!
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < points.length; i++) {
    const q = nearestOnSegment(points[i]!, points[(i + 1) % points.length]!, p)
    const d = Math.hypot(q[0] - p[0], q[1] - p[1])
    if (d < least) [least, best] = [d, q]
  }
  return best
}

/** Least distance between a segment and a convex polygon in plan, m, with the point of the polygon; 0 where they meet. */
export function segmentToPolygon(a: Vec2, b: Vec2, points: Vec2[]): { distance: number; at: Vec2 } {
  let distance = Number.POSITIVE_INFINITY
  let at: Vec2 = points[0]!
  const offer = (d: number, p: Vec2): void => {
    if (d < distance) [distance, at] = [d, p]
  }
  for (const end of [a, b]) {
    const q = nearestInPolygon(points, end)
    offer(Math.hypot(q[0] - end[0], q[1] - end[1]), q)
  }
  for (let i = 0; i < points.length; i++) {
    const p = points[i]!
    const next = points[(i + 1) % points.length]!
    const q = nearestOnSegment(a, b, p)
    offer(Math.hypot(q[0] - p[0], q[1] - p[1]), p)
    const hit = crossing(a, b, p, next)
    if (hit) offer(0, hit)
  }
  return { distance, at }
}

function crossing(a: Vec2, b: Vec2, p: Vec2, q: Vec2): Vec2 | null {
  const s1 = cross(a, b, p)
  const s2 = cross(a, b, q)
  if (s1 * s2 >= 0 || cross(p, q, a) * cross(p, q, b) >= 0) return null
  const t = s1 / (s1 - s2)
  return [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t]
}
