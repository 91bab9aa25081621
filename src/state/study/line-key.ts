/** Everything that a line's study depends on, as one text: where it is the same, the study is. */
import type { Line, Plan } from '../../plan/types'

export function lineKey(plan: Plan, line: Line): string {
  const girder = plan.girders.find((g) => g.id === line.girder)
  const workers = plan.workers.filter((w) => w.line === line.id)
  const used = new Set<string>([
    line.wireRope,
    ...(line.absorber ? [line.absorber] : []),
    ...line.hardware,
    ...line.stanchions.flatMap((s) => [s.part, s.bracket]),
    ...line.tieBacks.map((t) => t.part),
    ...workers.map((w) => w.connector),
  ])
  const parts = plan.parts.filter((p) => used.has(p.id))
  return JSON.stringify([line, girder, workers, parts, plan.basis, plan.decks ?? []])
}
