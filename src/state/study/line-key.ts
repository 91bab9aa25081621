/** Everything that a line's study depends on, as one text: where it is the same, the study is. */
import type { Line, Plan } from '../../plan/types'
import { partIdsOf } from '../../plan/uses'

export function lineKey(plan: Plan, line: Line): string {
  const girder = plan.girders.find((g) => g.id === line.girder)
  const workers = plan.workers.filter((w) => w.line === line.id)
  const used = partIdsOf({ lines: [line], workers })
  const parts = plan.parts.filter((p) => used.has(p.id))
  return JSON.stringify([line, girder, workers, parts, plan.basis, plan.decks ?? []])
}
