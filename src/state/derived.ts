/** Plain look-ups over plan and results that several panels need; memoised on their inputs, so that React sees the same object. */
import type { Plan } from '../plan/types'
import type { Finding, FindingStatus, Results } from '../study/results'
import type { FindingKey } from './window-state'

const worst: FindingStatus[] = ['fail', 'warn', 'unknown', 'pass']

/** Remembers the last answer only: the inputs are replaced, never changed. */
export function once<A extends unknown[], R>(compute: (...args: A) => R): (...args: A) => R {
  let last: { args: A; result: R } | null = null
  return (...args) => {
    if (!last || args.some((a, i) => a !== last?.args[i])) last = { args, result: compute(...args) }
    return last.result
  }
}

const none: Finding[] = []

/**
 * How near to its limit within a status, the nearest first: margin over limit. What is counted (two loops of two wanted) is
 * either there or not, so its margin says little: it comes after what is measured.
 */
const strain = (f: Finding): number => {
  if (f.margin === null || f.margin === undefined) return Number.POSITIVE_INFINITY
  return (f.unit === 'count' ? 1e6 : 0) + (f.limit ? f.margin / Math.abs(f.limit) : f.margin)
}

/** Fails, then look here, then not known, then what holds by margin. */
export const sortedFindings = once((results: Results | null): Finding[] =>
  results
    ? [...results.findings].sort(
        (a, b) => worst.indexOf(a.status) - worst.indexOf(b.status) || compare(strain(a), strain(b)),
      )
    : none,
)

const compare = (a: number, b: number): number => (a === b ? 0 : a < b ? -1 : 1)

export const statusCounts = once((results: Results | null): Record<FindingStatus, number> => {
  const counts = { fail: 0, warn: 0, unknown: 0, pass: 0 }
  for (const finding of results?.findings ?? []) counts[finding.status]++
  return counts
})

/** The worst status of each subject id; a line also bears the worst of what is on it. */
export const worstById = once((plan: Plan, results: Results | null): Map<string, FindingStatus> => {
  const map = new Map<string, FindingStatus>()
  const raise = (id: string, status: FindingStatus): void => {
    const was = map.get(id)
    if (!was || worst.indexOf(status) < worst.indexOf(was)) map.set(id, status)
  }
  const lineOf = new Map<string, string>()
  for (const line of plan.lines) {
    for (const item of [...line.stanchions, ...line.tieBacks]) lineOf.set(item.id, line.id)
  }
  for (const finding of results?.findings ?? []) {
    raise(finding.subject, finding.status)
    const line = finding.line ?? lineOf.get(finding.subject)
    if (line) raise(line, finding.status)
  }
  return map
})

export const isFinding = (finding: Finding, key: FindingKey | null): boolean =>
  key !== null && finding.rule === key.rule && finding.subject === key.subject
