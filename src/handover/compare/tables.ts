/** A comparison side by side: what was before and what is after, as rows for papers and panels. */
import type { Plan } from '../../plan/types'
import { formatQuantity, type UnitSystem } from '../../plan/units'
import { ruleById } from '../../rules'
import type { Finding } from '../../study/results'
import { nameOf } from '../names'
import { statusWords } from '../status'
import type { Comparison } from './index'
import type { FindingChange } from './results'
import { figureWords } from './words'

export interface SideBySide {
  key: string
  what: string
  before: string
  after: string
}

const turns: Record<FindingChange['how'], string> = {
  worse: 'worse',
  better: 'better',
  came: 'new',
  went: 'gone',
  value: 'another value',
}

/** Findings that changed, turns for the worse first; the turn stands with the name. */
export function findingRows(c: Comparison, plan: Plan, units: UnitSystem): SideBySide[] {
  const side = (f: Finding | null): string =>
    f === null ? 'not there' : `${statusWords[f.status]}, ${formatQuantity(f.value, f.unit, units)}`
  return c.findings.map((x) => ({
    key: `${x.rule} ${x.subject} ${x.after?.line ?? x.before?.line ?? ''}`,
    what: `${ruleById(x.rule)?.title ?? x.rule}, ${nameOf(plan, x.subject)} (${turns[x.how]})`,
    ...sides(side(x.before), side(x.after)),
  }))
}

/** Governing numbers that differ. */
export const governingRows = (c: Comparison, plan: Plan, units: UnitSystem): SideBySide[] =>
  c.governing.map((x) => ({
    key: `${x.line} ${x.figure}`,
    what: `${nameOf(plan, x.line)}, ${figureWords[x.figure]}`,
    ...sides(formatQuantity(x.before, x.unit, units), formatQuantity(x.after, x.unit, units)),
  }))

/** Two figures that read the same but are not are said to be so. */
const sides = (before: string, after: string): Pick<SideBySide, 'before' | 'after'> => ({
  before,
  after: before === after ? `${after} (less apart than is printed)` : after,
})
