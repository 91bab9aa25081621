/** Finding one's way in the facts: every subject of a kind, and the one that a finding is about. */
import type {
  LineFacts,
  ObstacleFacts,
  RowFacts,
  RuleContext,
  StanchionFacts,
  TieBackFacts,
  WorkerFacts,
} from './context'
import type { Finding } from './finding'

export const eachLine = (ctx: RuleContext, tell: (facts: LineFacts) => Finding | null): Finding[] =>
  ctx.lines.map(tell).filter((f) => f !== null)

export const eachStanchion = (
  ctx: RuleContext,
  tell: (s: StanchionFacts, line: LineFacts) => Finding | null,
): Finding[] =>
  ctx.lines.flatMap((line) => line.stanchions.map((s) => tell(s, line))).filter((f) => f !== null)

export const eachTieBack = (
  ctx: RuleContext,
  tell: (t: TieBackFacts, line: LineFacts) => Finding,
): Finding[] => ctx.lines.flatMap((line) => line.tieBacks.map((t) => tell(t, line)))

export const eachWorker = (ctx: RuleContext, tell: (w: WorkerFacts, line: LineFacts) => Finding): Finding[] =>
  ctx.lines.flatMap((line) => line.workers.map((w) => tell(w, line)))

export const lineOf = (ctx: RuleContext, f: Finding): LineFacts | null =>
  ctx.lines.find((l) => l.line.id === f.subject) ?? null

interface On<T> {
  facts: T
  line: LineFacts
}

function search<T>(
  ctx: RuleContext,
  list: (line: LineFacts) => T[],
  hit: (facts: T) => boolean,
): On<T> | null {
  for (const line of ctx.lines) {
    const facts = list(line).find(hit)
    if (facts !== undefined) return { facts, line }
  }
  return null
}

export const stanchionOf = (ctx: RuleContext, f: Finding): On<StanchionFacts> | null =>
  search(
    ctx,
    (l) => l.stanchions,
    (s) => s.stanchion.id === f.subject,
  )

export const tieBackOf = (ctx: RuleContext, f: Finding): On<TieBackFacts> | null =>
  search(
    ctx,
    (l) => l.tieBacks,
    (t) => t.tieBack.id === f.subject,
  )

export const workerOf = (ctx: RuleContext, f: Finding): On<WorkerFacts> | null =>
  search(
    ctx,
    (l) => l.workers,
    (w) => w.worker.id === f.subject,
  )

export const rowOf = (ctx: RuleContext, f: Finding): RowFacts | null =>
  ctx.rows.find((r) => r.row.id === f.subject) ?? null

export const obstacleOf = (ctx: RuleContext, f: Finding): ObstacleFacts | null =>
  ctx.obstacles.find((o) => o.id === f.subject) ?? null
