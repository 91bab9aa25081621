/** Loops as a crew counts them: from 1 at the girder's start. */
import { loopNumber } from '../geometry/loops'
import type { Line, LoopRow, Plan } from '../plan/types'

/** The loop row nearest to the line's stanchions in offset; null where the girder has none. */
export function rowOfLine(plan: Plan, line: Line): LoopRow | null {
  const rows = plan.girders.find((g) => g.id === line.girder)?.loops ?? []
  const offset = line.stanchions[0]?.offset ?? 0
  return rows.reduce<LoopRow | null>(
    (best, row) =>
      best === null || Math.abs(row.offset - offset) < Math.abs(best.offset - offset) ? row : best,
    null,
  )
}

/** Numbers of the loops on either side of a station; null past the end of the row on that side. */
export function loopsAround(row: LoopRow, station: number): { before: number | null; after: number | null } {
  const place = (station - row.first) / row.spacing
  const before = Math.floor(place + 1e-9)
  const after = Math.ceil(place - 1e-9)
  const real = (i: number): number | null => (i >= 0 && i < row.count ? loopNumber(i) : null)
  return { before: real(before), after: real(after) }
}
