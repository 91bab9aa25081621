/** Replaces a girder's loop rows; tie-backs on it keep the nearest loops to where their feet were. */
import { loopStation } from '../../geometry/loops'
import { usedIds } from '../../plan/ids'
import type { Girder, LoopRef, LoopRow, Plan } from '../../plan/types'
import type { ReadRow } from '../tables/loop-table'
import { newId } from './ids'

const usualBar = { barDiameter: 0.0127, yieldStress: 414e6, height: 0.15 }

/** Ids of the tie-backs whose feet moved by more than a thumb. */
export function replaceLoops(plan: Plan, girderId: string, rows: readonly ReadRow[]): string[] {
  const girder = plan.girders.find((g) => g.id === girderId)
  if (!girder || rows.length === 0) return []
  const taken = usedIds(plan)
  const bar = girder.loops[0] ?? usualBar
  const { barDiameter, yieldStress, height } = bar
  const before = girder.loops
  girder.loops = rows.map((row) => ({
    id: newId(plan, 'R', taken),
    ...row,
    barDiameter,
    yieldStress,
    height,
  }))
  return plan.lines
    .filter((l) => l.girder === girderId)
    .flatMap((line) =>
      line.tieBacks.flatMap((t) => {
        const moved = [t.strapLoop, t.tensionerLoop].map((ref) => refit(girder, before, ref))
        return Math.max(...moved) > 0.03 ? [t.id] : []
      }),
    )
}

/** Points a reference at the loop nearest to where its loop was; how far that is, m. */
function refit(girder: Girder, before: LoopRow[], ref: LoopRef): number {
  const old = before.find((r) => r.id === ref.row)
  const station = old ? loopStation(old, ref.index) : 0
  let best = { far: Number.POSITIVE_INFINITY, row: girder.loops[0]?.id ?? ref.row, index: 0 }
  for (const row of girder.loops) {
    const index = Math.min(row.count - 1, Math.max(0, Math.round((station - row.first) / row.spacing)))
    const far =
      Math.abs(loopStation(row, index) - station) + Math.abs(row.offset - (old?.offset ?? row.offset))
    if (far < best.far) best = { far, row: row.id, index }
  }
  ref.row = best.row
  ref.index = best.index
  return best.far
}
