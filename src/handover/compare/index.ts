/** Two plans, or two revisions of one, side by side: what moved and which findings changed. */
import type { Plan } from '../../plan/types'
import type { UnitSystem } from '../../plan/units'
import type { Results } from '../../study/results'
import { type Change, planChanges, samePlan } from './plans'
import { type FindingChange, findingChanges, type GoverningChange, governingChanges } from './results'
import { changeText, findingChangeText, governingText } from './words'

export type { Change } from './plans'
export type { FindingChange, GoverningChange } from './results'
export { changeText } from './words'

export interface Comparison {
  /** Both plans give the same numbers. */
  same: boolean
  changes: Change[]
  findings: FindingChange[]
  governing: GoverningChange[]
}

export interface Studied {
  plan: Plan
  results: Results
}

export function comparePlans(before: Studied, after: Studied): Comparison {
  return {
    same: samePlan(before.plan, after.plan),
    changes: planChanges(before.plan, after.plan),
    findings: findingChanges(before.results, after.results),
    governing: governingChanges(before.results, after.results),
  }
}

/** Under three headings, each line a sentence without its stop; empty lists are left out. */
export function comparisonLists(
  c: Comparison,
  plan: Plan,
  units: UnitSystem,
): { title: string; items: string[] }[] {
  const lists = [
    { title: 'What moved or changed', items: c.changes.map((x) => changeText(x, plan, units)) },
    { title: 'Governing numbers', items: c.governing.map((x) => governingText(x, plan, units)) },
    { title: 'Findings', items: c.findings.map((x) => findingChangeText(x, plan, units)) },
  ]
  return lists.filter((l) => l.items.length > 0)
}
