/** The gap of every obstacle of a plan, worst over its lines. */
import type { Plan } from '../../plan/types'
import type { Room } from '../room/types'
import { measuredGap, nearestGap } from './kept-gaps'
import type { Near } from './nearest'
import { type Measured, type MeshTarget, type Target, targetsOf } from './target'
import type { ObstacleGap } from './types'

/** What one line's room says of every target, in the order of `targetsOf`. */
export type LineGaps = (Measured | null)[]

/** Measures every target against one room; what was measured before of both as they are now is kept. */
export const gapsOfLine = (room: Room, targets: Target[]): LineGaps =>
  targets.map((t) => measuredGap(room, t))

/**
 * The gap of every obstacle and girder (mechanics section 8): the least vertical distance from the underside of the
 * lines' rooms to it over the plan area they share, less its own margin; negative is a clash. Nothing is passed over in
 * silence: where a room or a model is not known, neither is the gap, unless what is known already clashes. With `nearest`
 * the least distance in any direction is told too, which takes longer.
 */
export function gapsOfPlan(
  plan: Plan,
  rooms: Room[],
  meshes = new Map<string, MeshTarget>(),
  nearest = false,
): ObstacleGap[] {
  const targets = targetsOf(plan, meshes)
  const byLine = rooms.map((room) => gapsOfLine(room, targets))
  const gaps = mergeGaps(targets, rooms, byLine)
  return nearest ? gaps.map((gap, i) => withNearest(gap, targets[i]!, rooms)) : gaps
}

/** Joins what the lines say, line by line as in `rooms`. */
function mergeGaps(targets: Target[], rooms: Room[], byLine: LineGaps[]): ObstacleGap[] {
  return targets.map((target, i) =>
    mergeTarget(
      target,
      rooms,
      byLine.map((gaps) => gaps[i] ?? null),
    ),
  )
}

function mergeTarget(target: Target, rooms: Room[], measured: (Measured | null)[]): ObstacleGap {
  if (!target.measure) return { ...empty(target.id), unknown: target.unknown ?? 'it cannot be measured' }
  const told = shared(target, rooms, measured) ?? apart(target.id, rooms, measured)
  const missing = rooms.find((room) => room.unknown !== null)
  if (!missing?.unknown || (told.gap !== null && told.gap < 0)) return told
  return { ...told, gap: null, unknown: `the fall room is not known ${missing.unknown}` }
}

/** The worst of the lines that share plan area with the target. */
function shared(target: Target, rooms: Room[], measured: (Measured | null)[]): ObstacleGap | null {
  let best = -1
  measured.forEach((m, i) => {
    const gap = m?.point?.gap
    if (gap !== undefined && (best < 0 || gap < measured[best]!.point!.gap)) best = i
  })
  if (best < 0) return null
  const room = rooms[best]!
  const { note, point } = measured[best]!
  const { worker, line, connector } = room.corners[point!.corner]!
  return {
    ...empty(target.id),
    gap: point!.gap - target.margin,
    at: point!.at,
    line: room.line,
    station: point!.station,
    worker,
    corner: { line, connector },
    ...(point!.centre ? { centre: point!.centre } : {}),
    ...(note ? { note } : {}),
  }
}

/** No shared area: the line that comes nearest in plan, or what the lines say of it. */
function apart(id: string, rooms: Room[], measured: (Measured | null)[]): ObstacleGap {
  let best = -1
  measured.forEach((m, i) => {
    const distance = m?.beside?.distance
    if (distance !== undefined && (best < 0 || distance < measured[best]!.beside!.distance)) best = i
  })
  const note = measured.find((m) => m?.note)?.note
  if (best < 0) return { ...empty(id), ...(note ? { note } : {}) }
  const { distance, at, station } = measured[best]!.beside!
  return { ...empty(id), at, line: rooms[best]!.line, station, horizontal: distance }
}

/** Adds the least distance in any direction: 0 in a clash, not told where a part of a room is not known. */
function withNearest(gap: ObstacleGap, target: Target, rooms: Room[]): ObstacleGap {
  if (gap.unknown !== undefined) return gap
  if (gap.gap !== null && gap.gap + target.margin <= 0) {
    const { at, line, station, worker } = gap
    const place = at && line && station !== null && worker ? { at, line, station, worker } : null
    return { ...gap, nearest: 0, nearestAt: place }
  }
  let best: { near: Near; room: Room } | null = null
  for (const room of rooms) {
    const near = nearestGap(room, target)
    if (near && (!best || near.distance < best.near.distance)) best = { near, room }
  }
  if (!best) return gap
  const { near, room } = best
  const { worker } = room.corners[near.corner]!
  const nearestAt = { at: near.at, line: room.line, station: near.station, worker }
  return { ...gap, nearest: near.distance, nearestAt }
}

const empty = (id: string): ObstacleGap => ({
  id,
  gap: null,
  at: null,
  line: null,
  station: null,
  horizontal: null,
  nearest: null,
  nearestAt: null,
  worker: null,
  corner: null,
})
