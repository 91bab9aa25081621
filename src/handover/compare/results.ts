/** What differs between the results of two plans: findings that came, went or turned, and the governing numbers. */
import { greatestArrest } from '../../study/greatest-arrest'
import type { Finding, LineResults, Results } from '../../study/results'
import { statusOrder } from '../status'

export interface FindingChange {
  rule: string
  subject: string
  before: Finding | null
  after: Finding | null
  how: 'came' | 'went' | 'worse' | 'better' | 'value'
}

const key = (f: Finding): string => `${f.rule}\u0000${f.subject}\u0000${f.line ?? ''}`

/** Smaller differences than this share are not told: they come from the arithmetic, not from the plan. */
const SAME = 1e-6

const sameNumber = (a: number | null, b: number | null): boolean =>
  a === b || (a !== null && b !== null && Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b)))

/** Findings that changed, turns for the worse first. */
export function findingChanges(before: Results, after: Results): FindingChange[] {
  const old = new Map(before.findings.map((f) => [key(f), f]))
  const now = new Map(after.findings.map((f) => [key(f), f]))
  const changes = [...new Set([...now.keys(), ...old.keys()])].flatMap((k) => {
    const change = changeOf(old.get(k) ?? null, now.get(k) ?? null)
    return change ? [change] : []
  })
  const order = ['worse', 'came', 'went', 'better', 'value'] as const
  return changes.sort((a, b) => order.indexOf(a.how) - order.indexOf(b.how))
}

function changeOf(before: Finding | null, after: Finding | null): FindingChange | null {
  const f = after ?? before
  if (!f) return null
  const base = { rule: f.rule, subject: f.subject, before, after }
  if (!before) return { ...base, how: 'came' }
  if (!after) return { ...base, how: 'went' }
  const turn = statusOrder.indexOf(after.status) - statusOrder.indexOf(before.status)
  if (turn !== 0) return { ...base, how: turn < 0 ? 'worse' : 'better' }
  const same = sameNumber(before.value, after.value) && sameNumber(before.limit, after.limit)
  return same ? null : { ...base, how: 'value' }
}

export interface GoverningChange {
  line: string
  figure: 'tension' | 'arrestForce' | 'clearance' | 'wireRopeSafetyFactor'
  unit: string
  before: number | null
  after: number | null
}

const figures = [
  ['tension', 'N'],
  ['arrestForce', 'N'],
  ['clearance', 'm'],
  ['wireRopeSafetyFactor', 'ratio'],
] as const

/** Governing numbers of lines that both plans have, where they differ. */
export function governingChanges(before: Results, after: Results): GoverningChange[] {
  return after.lines.flatMap((line) => {
    const was = before.lines.find((l) => l.id === line.id)
    if (!was) return []
    return figures.flatMap(([figure, unit]): GoverningChange[] => {
      const [a, b] = [figureOf(before, was, figure), figureOf(after, line, figure)]
      return sameNumber(a, b) ? [] : [{ line: line.id, figure, unit, before: a, after: b }]
    })
  })
}

const figureOf = (results: Results, line: LineResults, figure: GoverningChange['figure']): number | null =>
  figure === 'arrestForce' ? greatestArrest(results, line) : line.governing[figure]
