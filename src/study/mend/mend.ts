/** The smallest changes that mend a failing finding: each is computed through the whole study before it is offered. */
import type { Plan } from '../../plan/types'
import { timeCheck } from '../find/time-stop'
import { type LineStudy, studyLine } from '../line-study'
import type { Models } from '../obstacles'
import type { Finding, FindingStatus, Results } from '../results'
import { study } from '../study'
import { type Change, changesFor, lineOfFinding } from './changes'

export interface Mending {
  label: string
  effort: number
  plan: Plan
  /** The finding as it stands after the change. */
  after: { status: FindingStatus; text: string; margin: number | null }
  /** Findings that fail after the change, and those among them that did not before. */
  fails: number
  worse: { rule: string; subject: string; text: string }[]
}

export interface MendProgress {
  done: number
  doing: string
  found: Mending[]
}

export interface MendOptions {
  models?: Models
  /** How many changes are computed with their falls in time. */
  most?: number
  withoutTime?: boolean
}

type Key = Pick<Finding, 'rule' | 'subject' | 'line'>

const find = (results: Results, key: Key): Finding | undefined =>
  results.findings.find((f) => f.rule === key.rule && f.subject === key.subject)

/** A finding that is gone, or holds, or only asks to look, does not fail any more. */
const mended = (f: Finding | undefined): boolean =>
  f === undefined || f.status === 'pass' || f.status === 'warn'

const failing = (results: Results): Finding[] => results.findings.filter((f) => f.status === 'fail')

/** Tries the changes for a finding, the smallest first; yields as it goes. */
export function* mend(plan: Plan, key: Key, options: MendOptions = {}): Generator<MendProgress, Mending[]> {
  const line = lineOfFinding(plan, key)
  const changes = changesFor(plan, key)
  if (!line || changes.length === 0) return []
  const found: Mending[] = []
  const models = options.models ? { models: options.models } : {}
  const others = new Map<string, LineStudy>()
  const whole = (p: Plan, withoutTime: boolean, own?: LineStudy): Results => {
    const known = own ? new Map([...others, [own.id, own]]) : others
    const done = study(p, { withoutTime, ...models, known })
    for (const l of done.lines) if (l.id !== line.id) others.set(l.id, l)
    return done.results
  }
  // Lines that stay as they are are studied once; in time only where the end result is wanted in time.
  const before = new Set(
    failing(whole(plan, options.withoutTime === true)).map((f) => `${f.rule} ${f.subject}`),
  )
  const most = options.most ?? 5
  for (const [i, change] of changes.entries()) {
    if (found.length >= most) break
    yield { done: i / changes.length, doing: change.label, found }
    if (!likely(whole(change.plan, true), key)) continue
    const results = options.withoutTime ? whole(change.plan, true) : inTime(change, key, line.id, whole)
    const mending = results && judged(change, results, key, before)
    if (mending) found.push(mending)
  }
  return found.sort((a, b) => a.worse.length - b.worse.length || a.effort - b.effort)
}

/** The study with the falls in time; null as soon as one of them fails the finding still. */
function inTime(
  change: Change,
  key: Key,
  lineId: string,
  whole: (p: Plan, withoutTime: boolean, own?: LineStudy) => Results,
): Results | null {
  const line = change.plan.lines.find((l) => l.id === lineId)
  if (!line) return whole(change.plan, false)
  const same = (f: Finding): boolean => f.rule === key.rule && f.subject === key.subject
  const { fails, falls } = timeCheck(change.plan, line, same)
  return fails.length > 0
    ? null
    : whole(
        change.plan,
        false,
        studyLine(change.plan, line, () => falls),
      )
}

/** By energy it is mended, or only the falls in time can tell. */
const likely = (results: Results, key: Key): boolean => {
  const f = find(results, key)
  return mended(f) || (f?.status === 'unknown' && key.rule === 'time-method')
}

function judged(change: Change, results: Results, key: Key, before: Set<string>): Mending | null {
  const after = find(results, key)
  if (!mended(after)) return null
  const fails = failing(results)
  const worse = fails
    .filter((f) => !before.has(`${f.rule} ${f.subject}`))
    .map(({ rule, subject, text }) => ({ rule, subject, text }))
  const told = after
    ? { status: after.status, text: after.text, margin: after.margin ?? null }
    : { status: 'pass' as const, text: 'What it was about is gone.', margin: null }
  return { ...change, after: told, fails: fails.length, worse }
}
