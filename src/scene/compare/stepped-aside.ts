/** What the scene leaves out: what is hidden by hand and, while only the other plan is shown, the open one's changed lines. */
import type { Plan } from '../../plan/types'
import { type BesideShown, beside, type OtherPlan } from '../../state/compare/beside'
import { once } from '../../state/derived'
import { useApp } from '../../state/store'

const none: readonly string[] = []

/** A line with all that stands and hooks on it. */
const asideOf = once((plan: Plan, other: OtherPlan | null, show: BesideShown): readonly string[] => {
  if (!other || show !== 'before') return none
  return plan.lines
    .filter((l) => other.lines.includes(l.id))
    .flatMap((l) => [
      l.id,
      ...l.stanchions.map((s) => s.id),
      ...l.tieBacks.map((t) => t.id),
      ...plan.workers.flatMap((w) => (w.line === l.id ? [w.id] : [])),
    ])
})

const both = once((hidden: readonly string[], aside: readonly string[]): readonly string[] =>
  aside.length === 0 ? hidden : [...hidden, ...aside],
)

/** Ids of what steps aside for the other plan. */
export function useAside(): readonly string[] {
  const plan = useApp((s) => s.plan)
  const { other, show } = beside()
  return asideOf(plan, other, show)
}

/** Ids of everything that is not drawn. */
export function useNotShown(): readonly string[] {
  const hidden = useApp((s) => s.hidden)
  return both(hidden, useAside())
}
