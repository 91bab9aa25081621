/**
 * Where a stanchion may stand: midway between two loops of the row its bracket lies in. Stations in metres along the
 * girder's top. Without loops any station will do.
 */
import { rowUnder } from '../../geometry/loops'
import { gapStations, girderLength, nearest, tidy } from '../../geometry/propose/gaps'
import type { Girder, Line } from '../../plan/types'

/** Stanchions of one line are kept at least this far apart where there are no loops to count by, m. */
const LEAST_SPAN = 0.3

export { gapStations, girderLength, nearest, tidy }

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
