/** Holding a value against its limit and saying so: the one place where a status comes about. */
import type { UnitSystem } from '../plan/units'
import { isKnown, type Known, whyUnknown } from './context'
import type { Finding, FindingStatus } from './finding'
import type { Rule } from './rule'
import { brief, sayBoth } from './words'

export type Want = 'at least' | 'at most' | 'less than'

/** Figures typed to be equal count as equal: the slack is for the last bits of a sum, not for the trade. */
const SLACK = 1e-9

/** Whether a value meets its limit. */
export function holds(value: number, limit: number, want: Want): boolean {
  const slack = SLACK * Math.max(1, Math.abs(limit))
  if (want === 'at least') return value >= limit - slack
  if (want === 'at most') return value <= limit + slack
  return value < limit - slack
}

/** Signed distance from the limit, positive to the good. */
const marginOf = (value: number, limit: number, want: Want): number =>
  want === 'at least' ? value - limit : limit - value

export interface Comparison {
  subject: string
  line?: string
  /** Who or what, at the head of the sentence. */
  where: string
  value: Known
  /** Where the value is unknown: it is this good at best, and may fail by it. */
  atBest?: number
  limit: number
  want: Want
  unit: string
  system: UnitSystem
  /** The sentence about the value. */
  tells: (value: string) => string
  /** What is wanted, where "at least 2 wanted" would not be said. */
  wants?: string
  /** What is not known where the value is not; absent: the rule's title. */
  what?: string
  /** Where the limit is from, said in brackets. */
  limitSource: string
  source: string
  /** What to do where it does not hold. */
  advice?: string
  /** Said always, after all else. */
  remark?: string
  /** Instead of 'fail' where the limit is missed. */
  otherwise?: FindingStatus
}

/** The finding of a value against a limit. */
export function compare(rule: Pick<Rule, 'id' | 'title'>, c: Comparison): Finding {
  if (!isKnown(c.value)) return notKnown(rule, c, whyUnknown(c.value))
  const good = holds(c.value, c.limit, c.want)
  return {
    ...headOf(rule, c),
    status: good ? 'pass' : (c.otherwise ?? 'fail'),
    value: c.value,
    limit: c.limit,
    text: sentences(sentence(c, c.value), good ? '' : (c.advice ?? ''), c.remark ?? ''),
    margin: marginOf(c.value, c.limit, c.want),
  }
}

/** Unknown, unless the part that is known misses the limit already. */
function notKnown(rule: Pick<Rule, 'id' | 'title'>, c: Comparison, why: string): Finding {
  if (c.atBest !== undefined && !holds(c.atBest, c.limit, c.want)) {
    const found = compare(rule, { ...c, value: c.atBest })
    return { ...found, text: sentences(found.text, `Not all of it could be computed: ${why}.`) }
  }
  return unknownFinding(rule, { ...c, what: c.what ?? rule.title.toLowerCase() }, why)
}

/** A finding whose value could not be computed. */
export function unknownFinding(
  rule: Pick<Rule, 'id'>,
  c: Pick<Comparison, 'subject' | 'line' | 'where' | 'unit' | 'source'> & {
    what: string
    limit?: number | null
  },
  why: string,
): Finding {
  return {
    ...headOf(rule, c),
    status: 'unknown',
    value: null,
    limit: c.limit ?? null,
    text: `${c.where}: ${c.what} not known, because ${why}.`,
    margin: null,
  }
}

/** A finding that is not a comparison of two numbers. */
export function told(
  rule: Pick<Rule, 'id'>,
  c: Pick<Comparison, 'subject' | 'line' | 'unit' | 'source'> & {
    status: FindingStatus
    value: number | null
    limit?: number | null
    text: string
  },
): Finding {
  const head = headOf(rule, c)
  return { ...head, status: c.status, value: c.value, limit: c.limit ?? null, text: c.text, margin: null }
}

function headOf(rule: Pick<Rule, 'id'>, c: Pick<Comparison, 'subject' | 'line' | 'unit' | 'source'>) {
  return {
    rule: rule.id,
    subject: c.subject,
    unit: c.unit,
    source: c.source,
    ...(c.line === undefined ? {} : { line: c.line }),
  }
}

function sentence(c: Comparison, value: number): string {
  const [got, limit] = sayBoth(value, c.limit, c.unit, c.system)
  return `${c.where}: ${c.tells(got)}, ${c.wants ?? `${c.want} ${limit}`} wanted (${brief(c.limitSource)}).`
}

const sentences = (...parts: string[]): string =>
  parts
    .filter((p) => p.trim() !== '')
    .join(' ')
    .replace(/ {2,}/g, ' ')
