/** Stanchions: move between loops, nudge, add, remove. Each changes a draft of the plan. */
import { loopStation, rowUnder } from '../../geometry/loops'
import type { Plan, Stanchion } from '../../plan/types'
import { gapStations, girderLength, nearest, type Placed, placeStanchion, tidy } from './gaps'
import { newId } from './ids'
import { girderOf, stanchionIn } from './lookup'

export interface MoveOptions {
  /** Anywhere, not only between loops. */
  free?: boolean
  /** The feet of its tie-backs go along by the same number of loops. */
  withTieBacks?: boolean
}

/** Moves a stanchion as near to a station as loops, neighbours and girder let it; says where it went and what held it. */
export function moveStanchion(
  plan: Plan,
  id: string,
  wanted: number,
  options: MoveOptions = {},
): Placed | null {
  const at = stanchionIn(plan, id)
  if (!at) return null
  const placed = placeStanchion(at.girder, at.line, at.index, wanted, options.free)
  const by = placed.station - at.stanchion.station
  if (by !== 0) at.stanchion.station = placed.station
  if (options.withTieBacks) shiftTieBacks(plan, id, by)
  return placed
}

/** One loop gap (or 0.1 m where there are no loops) towards the girder's end or, with -1, its start. */
export function nudgeStanchion(
  plan: Plan,
  id: string,
  direction: 1 | -1,
  withTieBacks = false,
): Placed | null {
  const at = stanchionIn(plan, id)
  if (!at) return null
  const row = rowUnder(at.girder, at.stanchion.offset)
  const gaps = gapStations(at.girder, row)
  const here = at.stanchion.station
  const next = direction > 0 ? gaps.find((s) => s > here + 1e-4) : gaps.filter((s) => s < here - 1e-4).at(-1)
  const wanted = next ?? (row ? here : here + direction * 0.1)
  return moveStanchion(plan, id, wanted, { withTieBacks })
}

function shiftTieBacks(plan: Plan, stanchion: string, by: number): void {
  const at = stanchionIn(plan, stanchion)
  if (!at) return
  for (const tieBack of at.line.tieBacks.filter((t) => t.stanchion === stanchion)) {
    for (const loop of [tieBack.strapLoop, tieBack.tensionerLoop]) {
      const row = at.girder.loops.find((r) => r.id === loop.row)
      if (row) loop.index = Math.min(row.count - 1, Math.max(0, loop.index + Math.round(by / row.spacing)))
    }
  }
}

/** A further stanchion between two others, or past an end, like its neighbour; null where there is no room. */
export function addStanchion(plan: Plan, lineId: string, wanted: number): string | null {
  const line = plan.lines.find((l) => l.id === lineId)
  const girder = line && girderOf(plan, line)
  const like = line?.stanchions[0]
  if (!line || !girder || !like || !Number.isFinite(wanted)) return null
  const gaps = gapStations(girder, rowUnder(girder, like.offset))
  const station = tidy(nearest(gaps, Math.min(girderLength(girder), Math.max(0, wanted))))
  if (line.stanchions.some((s) => Math.abs(s.station - station) < 0.1)) return null
  const after = line.stanchions.findIndex((s) => s.station > station)
  const index = after < 0 ? line.stanchions.length : after
  const neighbour = line.stanchions[Math.max(0, index - 1)] ?? like
  const made: Stanchion = { ...neighbour, id: newId(plan, 'S'), station }
  line.stanchions.splice(index, 0, made)
  setRoles(line.stanchions)
  return made.id
}

/** Takes a stanchion away with its tie-backs; a line keeps at least two. */
export function removeStanchion(plan: Plan, id: string): boolean {
  const at = stanchionIn(plan, id)
  if (!at || at.line.stanchions.length <= 2) return false
  at.line.stanchions.splice(at.index, 1)
  at.line.tieBacks = at.line.tieBacks.filter((t) => t.stanchion !== id)
  setRoles(at.line.stanchions)
  return true
}

/** First and last are end stanchions, those between are intermediate. */
function setRoles(stanchions: Stanchion[]): void {
  stanchions.forEach((s, i) => {
    s.role = i === 0 || i === stanchions.length - 1 ? 'end' : 'intermediate'
  })
}

/** Loop numbers (from 1, as people count) on both sides of a station, for labels: "between loops 7 and 8". */
export function loopsBeside(plan: Plan, id: string): { before: number; after: number } | null {
  const at = stanchionIn(plan, id)
  const row = at && rowUnder(at.girder, at.stanchion.offset)
  if (!at || !row) return null
  const place = (at.stanchion.station - loopStation(row, 0)) / row.spacing
  const before = Math.floor(place + 1e-6) + 1
  return before < 1 || before >= row.count ? null : { before, after: before + 1 }
}
