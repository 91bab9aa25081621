/** Findings in the order in which they are read, with their words. */
import type { Finding, FindingStatus } from '../study/results'

export const statusWords: Record<FindingStatus, string> = {
  fail: 'fails',
  warn: 'look here',
  unknown: 'not known',
  pass: 'holds',
}

export const statusOrder: readonly FindingStatus[] = ['fail', 'warn', 'unknown', 'pass']

/** How near a finding is to its limit, as a share of it; what has no margin comes last. */
function nearness(f: Finding): number {
  if (f.margin === null || f.margin === undefined) return Number.POSITIVE_INFINITY
  return f.limit ? f.margin / Math.abs(f.limit) : f.margin
}

/** What fails first, then what wants a look, then what is not known; within each the nearest to its limit first. */
export const worstFirst = (findings: readonly Finding[]): Finding[] =>
  [...findings].sort((a, b) => {
    const byStatus = statusOrder.indexOf(a.status) - statusOrder.indexOf(b.status)
    return byStatus || compareNearness(a, b)
  })

function compareNearness(a: Finding, b: Finding): number {
  const [x, y] = [nearness(a), nearness(b)]
  return x === y ? 0 : x - y
}

/** As "1 fails, 3 look here, 0 not known, 24 hold". */
export function countedFindings(findings: readonly Finding[]): string {
  const count = (s: FindingStatus): number => findings.filter((f) => f.status === s).length
  const holds = count('pass') === 1 ? 'holds' : 'hold'
  return `${count('fail')} ${count('fail') === 1 ? 'fails' : 'fail'}, ${count('warn')} look here, ${count('unknown')} not known, ${count('pass')} ${holds}`
}
