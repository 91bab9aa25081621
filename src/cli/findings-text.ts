/** The findings of a plan as a person reads them in a terminal: what fails first. */
import { approvalState } from '../plan/records/log'
import type { Plan } from '../plan/types'
import type { Finding, FindingStatus, Results } from '../study/results'

export const STATUS_WORDS: Record<FindingStatus, string> = {
  fail: 'fails',
  warn: 'look here',
  unknown: 'not known',
  pass: 'holds',
}

export const CAUTION =
  'For planning. Design, installation and use under a qualified person; the parts’ own documentation and local codes govern.'

const ORDER: FindingStatus[] = ['fail', 'warn', 'unknown', 'pass']

/** How near a finding is to its limit, as a share of it; what has no margin comes last. */
function nearness(f: Finding): number {
  if (f.margin === null || f.margin === undefined) return Number.POSITIVE_INFINITY
  return f.limit ? f.margin / Math.abs(f.limit) : f.margin
}

/** Worst first: by status, then by margin. */
export const worstFirst = (findings: Finding[]): Finding[] =>
  [...findings].sort((a, b) => ORDER.indexOf(a.status) - ORDER.indexOf(b.status) || nearness(a) - nearness(b))

const counted = (findings: Finding[]): string =>
  ORDER.map((s) => `${findings.filter((f) => f.status === s).length} ${STATUS_WORDS[s]}`).join(', ')

/** Whether somebody's approval is for exactly this plan; any change that counts makes it stale. */
function approvalText(plan: Plan, hash: string): string {
  const { status, record } = approvalState(plan, hash)
  if (!record) return 'no approval is recorded'
  const who = `${record.by}, ${record.at.slice(0, 10)}`
  return status === 'current'
    ? `approval recorded by ${who}, for exactly this plan`
    : `stale: the approval by ${who} was for another state of the plan`
}

/** The whole page. */
export function findingsText(plan: Plan, results: Results): string {
  const width = Math.max(...ORDER.map((s) => STATUS_WORDS[s].length))
  const lines = worstFirst(results.findings).map((f) => `${STATUS_WORDS[f.status].padEnd(width)}  ${f.text}`)
  return [
    plan.title,
    `plan ${results.planHash.slice(0, 12)}; ${counted(results.findings)}`,
    approvalText(plan, results.planHash),
    '',
    ...lines,
    '',
    CAUTION,
    '',
  ].join('\n')
}
