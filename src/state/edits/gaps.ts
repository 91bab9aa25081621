/**
 * Where a stanchion may stand: midway between two loops of the row its bracket lies in. Stations in metres along the
 * girder's top. Without loops any station will do.
 */
import { girderFrame } from '../../geometry/girder'
import { loopStation, rowUnder } from '../../geometry/loops'
import type { Girder, Line, LoopRow } from '../../plan/types'

/** Stanchions of one line are kept at least this far apart where there are no loops to count by, m. */
const LEAST_SPAN = 0.3

export const girderLength = (girder: Girder): number => girderFrame(girder).length

/** Midpoints between neighbouring loops that lie on the girder. */
export function gapStations(girder: Girder, row: LoopRow | null): number[] {
  if (!row) return []
  const length = girderLength(girder)
  return Array.from(
    { length: Math.max(0, row.count - 1) },
    (_, i) => loopStation(row, i) + row.spacing / 2,
  ).filter((s) => s >= 0 && s <= length)
}

/** The nearest of some stations; the wanted one where there are none. */
export function nearest(stations: readonly number[], wanted: number): number {
  let best = stations[0]
  if (best === undefined) return wanted
  for (const s of stations) if (Math.abs(s - wanted) < Math.abs(best - wanted)) best = s
  return best
}

export interface Placed {
  station: number
  /** Why it does not stand where it was wanted; null where it does. */
  held: string | null
}

/** Where stanchion `index` of a line comes to stand when it is wanted at a station. `free`: not between loops. */
export function placeStanchion(
  girder: Girder,
  line: Line,
  index: number,
  wanted: number,
  free = false,
): Placed {
  const moving = line.stanchions[index]
  if (!moving || !Number.isFinite(wanted)) return { station: moving?.station ?? 0, held: 'not a station' }
  const row = rowUnder(girder, moving.offset)
  const range = roomFor(girder, line, index, row?.spacing ?? LEAST_SPAN)
  const held = wanted < range.low ? range.lowWhy : wanted > range.high ? range.highWhy : null
  const clamped = Math.min(range.high, Math.max(range.low, wanted))
  const gaps = free ? [] : gapStations(girder, row).filter((s) => s >= range.low && s <= range.high)
  return { station: tidy(nearest(gaps, clamped)), held }
}

/** From just past the neighbour before to just short of the one after, or to the girder's ends. */
function roomFor(girder: Girder, line: Line, index: number, apart: number) {
  const before = line.stanchions[index - 1]
  const after = line.stanchions[index + 1]
  const slack = apart * 0.999
  return {
    low: before ? before.station + slack : 0,
    lowWhy: before ? `held by ${before.id}` : 'end of the girder',
    high: after ? after.station - slack : girderLength(girder),
    highWhy: after ? `held by ${after.id}` : 'end of the girder',
  }
}

/** Stations to a hundredth of a millimetre: sums of spacings leave tails that mean nothing. */
export const tidy = (m: number): number => Math.round(m * 1e5) / 1e5
