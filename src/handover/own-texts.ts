/** The texts of a plan that a person wrote: titles, names and notes, as they stand in sentences of the papers. */
import type { Plan } from '../plan/types'

export function ownTexts(plan: Plan): string[] {
  const named = [
    ...plan.girders,
    ...(plan.decks ?? []),
    ...plan.lines,
    ...plan.workers,
    ...plan.obstacles,
    ...plan.parts,
  ]
  const recorded = (plan.records ?? []).flatMap((r) => [
    r.by,
    r.note ?? '',
    ...('reason' in r ? [r.reason] : []),
    ...(r.kind === 'rescue-plan' ? [r.method, r.gear] : []),
  ])
  const texts = [plan.title, plan.site ?? '', plan.notes ?? '', ...named.map((n) => n.name), ...recorded]
  return [...new Set(texts.map((t) => t.trim()))]
}
