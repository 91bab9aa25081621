/**
 * Where a stanchion may stand: midway between two loops of the row its bracket lies in. Stations in metres along the
 * girder's top.
 */
import type { Girder, LoopRow } from '../../plan/types'
import { girderFrame } from '../girder'
import { loopStation } from '../loops'

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

/** Stations to a hundredth of a millimetre: sums of spacings leave tails that mean nothing. */
export const tidy = (m: number): number => Math.round(m * 1e5) / 1e5
