/** What is asked again and again of a room while a model is searched: bounds by station, and its footprint in few lines. */
import type { Vec2 } from '../../plan/types'
import { segmentToPolygon } from '../polygon'
import type { Room, Slice } from '../room/types'
import { allSlices } from '../room/underside'
import { meetingRange } from './swing-gap'

export interface PlanDistance {
  distance: number
  /** On the obstacle. */
  at: Vec2
  station: number
}

/** Length of a stretch along the line whose lowest point is kept, in stations (m along the girder). */
const STRETCH = 0.2

/** Of slices at the same station and in the same direction the widest alone. */
function rimOf(list: Slice[]): Slice[] {
  const by = new Map<number, Slice>()
  for (const s of list) if (s.reach > (by.get(s.station)?.reach ?? -1)) by.set(s.station, s)
  return [...by.values()]
}

export interface Footing {
  /** Least underside of the room, or a little less, over a rectangle in plan; infinite where they share no area. */
  lowestOver: (x0: number, y0: number, x1: number, y1: number) => number
  /** Distance in plan to a polygon, if below `limit`. */
  distanceTo: (points: Vec2[], limit: number) => PlanDistance | null
}

/** Slices that are tried one by one over a small rectangle; over a large one stretches do. */
interface Stretch {
  low: number
  slices: Slice[]
  /** The widest at each of their stations: what bounds the footprint. */
  rim: Slice[]
  /** The widest of them. */
  widest: Slice
}

function stretchesOf(slices: Slice[]): Stretch[] {
  const by = new Map<string, Slice[]>()
  for (const s of slices) {
    const key = `${Math.floor(s.station / STRETCH)}:${s.dx.toFixed(3)}:${s.dy.toFixed(3)}`
    const list = by.get(key)
    if (list) list.push(s)
    else by.set(key, [s])
  }
  return [...by.values()].map((list) => ({
    low: Math.min(...list.map((s) => s.z - s.radius)),
    slices: list,
    rim: rimOf(list),
    widest: list.reduce((a, b) => (b.reach > a.reach ? b : a)),
  }))
}

const known = new WeakMap<Room, Footing>()

/** The footing of a room, made once for it. */
export function footingOf(room: Room): Footing {
  const kept = known.get(room) ?? madeFooting(room)
  known.set(room, kept)
  return kept
}

function madeFooting(room: Room): Footing {
  const stretches = stretchesOf(allSlices(room))
  // A stretch stands for all its slices: its widest, moved by as much as they stand apart.
  const slack = stretchSlack(stretches)
  return {
    lowestOver: (x0, y0, x1, y1) => {
      const corners: Vec2[] = [
        [x0, y0],
        [x1, y0],
        [x1, y1],
        [x0, y1],
      ]
      let least = Number.POSITIVE_INFINITY
      for (const { low, widest, slices } of stretches) {
        if (low >= least || !meets(widest, room.side + slack, corners)) continue
        least = Math.min(least, leastOf(slices, room.side, corners, least))
      }
      return least
    },
    distanceTo: (points, limit) => {
      let best: PlanDistance | null = null
      const order = stretches
        .map((stretch) => ({
          ...stretch,
          least: far(stretch.widest, points[0]!, points) - slack - room.side,
        }))
        .sort((a, b) => a.least - b.least)
      for (const { widest, rim, least } of order) {
        if (least >= limit) break
        if (beside(widest, points).distance - slack - room.side >= limit) continue
        for (const s of rim) {
          const found = beside(s, points)
          const distance = Math.max(0, found.distance - room.side)
          if (distance >= limit) continue
          limit = distance
          best = { distance, at: found.at, station: s.station }
        }
      }
      return best
    },
  }
}

/** A lower bound of the distance from a swing to a polygon: from its middle to the polygon's circle about a corner. */
function far(s: Slice, [x, y]: Vec2, points: Vec2[]): number {
  let radius = 0
  for (const p of points) radius = Math.max(radius, Math.hypot(p[0] - x, p[1] - y))
  return Math.hypot(s.x - x, s.y - y) - s.reach - radius
}

/** Distance in plan between a swing, without the body about it, and a polygon. */
function beside(s: Slice, points: Vec2[]): { distance: number; at: Vec2 } {
  const a: Vec2 = [s.x - s.dx * s.reach, s.y - s.dy * s.reach]
  const b: Vec2 = [s.x + s.dx * s.reach, s.y + s.dy * s.reach]
  return segmentToPolygon(a, b, points)
}

function stretchSlack(stretches: Stretch[]): number {
  let most = 0
  for (const { slices, widest } of stretches) {
    for (const s of slices) most = Math.max(most, Math.hypot(s.x - widest.x, s.y - widest.y))
  }
  return most
}

function meets(s: Slice, side: number, corners: Vec2[]): boolean {
  const range = meetingRange(s, side, corners)
  return range !== null && range[0] <= s.reach && range[1] >= -s.reach
}

/** Least underside of some slices over a convex polygon, exactly. */
function leastOf(slices: Slice[], side: number, corners: Vec2[], limit: number): number {
  let least = limit
  for (const s of slices) {
    if (s.z - s.radius >= least) continue
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
