/** What is asked again and again of a room while a model is searched: bounds by station, and its footprint in few lines. */
import type { Vec2, Vec3 } from '../../plan/types'
import { segmentToPolygon } from '../polygon'
import type { Room, Slice } from '../room/types'
import { boxesApart, type PlanBox, planBox, roomAxis, type Stretch, stretchesOf } from './stretch'
import { mostIn } from './swing-distance'
import { meetingRange } from './swing-gap'

export interface PlanDistance {
  distance: number
  /** On the obstacle. */
  at: Vec2
  station: number
}

export interface Footing {
  stretches: Stretch[]
  /** The most of n.P over what a stretch sweeps, the body about it included; n a unit direction, not upwards. */
  mostIn: (n: Vec3, stretch: Stretch) => number
  /** Bounds of a polygon along and across the room's girder. */
  boxOf: (points: Vec2[]) => PlanBox
  /** Least underside of the room, or a little less, over a rectangle in plan; infinite where they share no area. */
  lowestOver: (x0: number, y0: number, x1: number, y1: number) => number
  /** Distance in plan to a polygon, if below `limit`. */
  distanceTo: (points: Vec2[], limit: number) => PlanDistance | null
}

const known = new WeakMap<Room, Footing>()

/** The footing of a room, made once for it. */
export function footingOf(room: Room): Footing {
  const kept = known.get(room) ?? madeFooting(room)
  known.set(room, kept)
  return kept
}

function madeFooting(room: Room): Footing {
  const stretches = stretchesOf(room)
  const byDepth = [...stretches].sort((a, b) => a.low - b.low)
  const [ax, ay] = roomAxis(room)
  const boxOf = (points: Vec2[]): PlanBox => planBox(points, ax, ay)
  return {
    stretches,
    boxOf,
    mostIn: mostInEach(room.side),
    lowestOver: (x0, y0, x1, y1) => {
      const corners: Vec2[] = [
        [x0, y0],
        [x1, y0],
        [x1, y1],
        [x0, y1],
      ]
      return lowestOver(byDepth, room.side, corners, boxOf(corners))
    },
    distanceTo: (points, limit) => distanceTo(stretches, room.side, points, boxOf(points), limit),
  }
}

/** Remembers what was found in the last direction: a search asks in the same one again and again. */
function mostInEach(side: number): Footing['mostIn'] {
  let last: Vec3 | null = null
  const found = new Map<Stretch, number>()
  return (n, stretch) => {
    if (n !== last) found.clear()
    last = n
    const kept = found.get(stretch)
    if (kept !== undefined) return kept
    let most = Number.NEGATIVE_INFINITY
    for (const s of stretch.slices) most = Math.max(most, mostIn(n, s))
    const whole = most + side * Math.sqrt(n[0] * n[0] + n[1] * n[1])
    found.set(stretch, whole)
    return whole
  }
}

/** Of stretches that are given lowest first. */
function lowestOver(stretches: Stretch[], side: number, corners: Vec2[], bounds: PlanBox): number {
  let least = Number.POSITIVE_INFINITY
  for (const { low, widest, slices, slack, box } of stretches) {
    if (low >= least) break
    if (boxesApart(box, bounds) > side) continue
    if (!meets(widest, side + slack, corners)) continue
    least = Math.min(least, leastOf(slices, side, corners, least))
  }
  return least
}

/** The stretch that may be nearest is looked at first, so that most of the others need no look. */
function distanceTo(
  stretches: Stretch[],
  side: number,
  points: Vec2[],
  bounds: PlanBox,
  limit: number,
): PlanDistance | null {
  let best: PlanDistance | null = null
  const look = ({ widest, rim, slack }: Stretch): void => {
    if (beside(widest, points).distance - slack - side >= limit) return
    for (const s of rim) {
      const found = beside(s, points)
      const distance = Math.max(0, found.distance - side)
      if (distance >= limit) continue
      limit = distance
      best = { distance, at: found.at, station: s.station }
    }
  }
  const first = nearestStretch(stretches, bounds)
  if (first) look(first)
  for (const stretch of stretches) {
    if (stretch !== first && boxesApart(stretch.box, bounds) - side < limit) look(stretch)
  }
  return best
}

function nearestStretch(stretches: Stretch[], bounds: PlanBox): Stretch | undefined {
  let least = Number.POSITIVE_INFINITY
  let first: Stretch | undefined
  for (const stretch of stretches) {
    const apart = boxesApart(stretch.box, bounds)
    if (apart < least) [least, first] = [apart, stretch]
  }
  return first
}

/** Distance in plan between a swing, without the body about it, and a polygon. */
export function beside(s: Slice, points: Vec2[]): { distance: number; at: Vec2 } {
  const a: Vec2 = [s.x - s.dx * s.reach, s.y - s.dy * s.reach]
  const b: Vec2 = [s.x + s.dx * s.reach, s.y + s.dy * s.reach]
  return segmentToPolygon(a, b, points)
}

function meets(s: Slice, side: number, corners: Vec2[]): boolean {
  const range = meetingRange(s, side, corners)
  return range !== null && range[0] <= s.reach && range[1] >= -s.reach
}

/** Least underside of some slices, lowest first, over a convex polygon, exactly. */
function leastOf(slices: Slice[], side: number, corners: Vec2[], limit: number): number {
  let least = limit
  for (const s of slices) {
    if (s.z - s.radius >= least) break
    const range = meetingRange(s, side, corners)
    if (!range) continue
    const from = Math.max(range[0], -s.reach)
    const to = Math.min(range[1], s.reach)
    if (from > to) continue
    const t = Math.min(Math.max(0, from), to)
    least = Math.min(least, s.z - Math.sqrt(Math.max(0, s.radius * s.radius - t * t)))
  }
  return least
}
