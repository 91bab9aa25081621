/**
 * One count of stanchions: every layout that the bounds leave is studied, by energy first, then with the falls in time.
 * Where no layout is left the count is proven not to pass; where there are too many left to study, that is said.
 */
import type { Line, Plan } from '../../plan/types'
import type { Models } from '../obstacles'
import type { SearchCase } from './case'
import { countReasons } from './count-reasons'
import { layouts, leastCost } from './paths'
import type { Places } from './places'
import { better, closeTo } from './rank'
import type { Aim, Candidate, CountReport, FindProgress, FindTask, Reason } from './types'
import { verify } from './verify'

/**
 * Layouts of one case and count that are studied before the search stops claiming: with their falls in time, for which
 * there is no bound (a fall in time may need less than by energy), and by energy, which takes a twentieth of that.
 */
const TIME_TRIES = 40
const ENERGY_TRIES = 400

export interface Running {
  task: FindTask
  plan: Plan
  line: Line
  places: Places
  aims: Aim[]
  models: Models | undefined
  best: Candidate | null
  passing: Candidate[]
  counts: CountReport[]
  studied: number
  least: boolean
}

export const progress = (
  r: Running,
  doing: string,
  done: number,
  stanchions: number | null,
): FindProgress => ({ doing, done, stanchions, studied: r.studied, best: r.best, counts: r.counts })

type Steps<R> = Generator<FindProgress, R>

const addTo = (list: Reason[], reason: Reason): void => {
  if (!list.some((x) => x.rule === reason.rule)) list.push(reason)
}

/** Layouts with exactly k stanchions: case by case, the least cost first. */
export function* oneCount(r: Running, cases: SearchCase[], k: number): Steps<CountReport> {
  const report: CountReport = { stanchions: k, status: 'none passes', studied: 0, reasons: [] }
  const order = cases
    .filter((c) => c.fewest !== null && c.fewest < k)
    .map((c) => ({ c, cost: leastCost(c.graph, k - 1) }))
    .filter((x) => x.cost !== null)
    .sort((a, b) => a.cost! - b.cost!)
  let whole = true
  for (const { c } of order) whole = (yield* oneCase(r, c, k, report)) && whole
  if (report.status === 'passes') r.least = r.least && whole
  else if (!whole) {
    report.status = 'not proven'
    report.reasons.unshift({ rule: 'search', text: untried(r, report.studied) })
  }
  if (report.status !== 'passes') {
    for (const b of countReasons(r.plan, r.places, cases, k, report.reasons)) addTo(report.reasons, b)
  }
  return report
}

/** Why a count stays open. */
const untried = (r: Running, studied: number): string =>
  r.task.withoutTime
    ? `${studied} layouts were studied and none passes; others were left untried.`
    : `${studied} layouts were studied and none passes; others were left untried: no bound is known for falls in time.`

/** One case at one count; true where all its layouts were looked at or can't be better than what passes. */
function* oneCase(r: Running, c: SearchCase, k: number, report: CountReport): Steps<boolean> {
  const rulesOut = (a: number, b: number): boolean => {
    const reason = c.ruledOut(a, b)
    if (!reason) return false
    if (!c.clashes.has(reason.rule)) c.clashes.set(reason.rule, reason)
    addTo(report.reasons, reason)
    return true
  }
  let here: Candidate | null = null
  const limit = (): number => (here ? closeTo(here, r.aims) : Number.POSITIVE_INFINITY)
  const most = r.task.tries ?? (r.task.withoutTime ? ENERGY_TRIES : TIME_TRIES)
  const tried = { energy: 0, time: 0 }
  for (const gaps of layouts(c.graph, k - 1, rulesOut, limit)) {
    const share = Math.max(tried.time / most, tried.energy / Math.max(most, ENERGY_TRIES))
    const doing = `Studying layouts with ${k} stanchions: ${report.studied} so far`
    yield progress(r, doing, 0.5 + 0.5 * share, k)
    if (share >= 1) return false
    tried.energy++
    const found = yield* studyOne(r, c, gaps, report, tried)
    if (!found) continue
    report.status = 'passes'
    r.passing.push(found)
    if (!here || better(found, here, r.aims)) here = found
    if (!r.best || better(found, r.best, r.aims)) r.best = found
    yield progress(r, doing, 0.5 + 0.5 * share, k)
  }
  return true
}

/** Studies a layout by energy, then with the falls in time; what stops it goes into the report. */
export function* studyOne(
  r: Running,
  c: SearchCase,
  gaps: number[],
  report: CountReport,
  tried: { time: number },
): Steps<Candidate | null> {
  const layout = c.layout(gaps)
  const models = r.models ? { models: r.models } : {}
  report.studied++
  r.studied++
  let candidate: Candidate | null = null
  for (const time of r.task.withoutTime ? [false] : [false, true]) {
    if (time) {
      tried.time++
      yield progress(r, `Falls in time of a layout with ${gaps.length} stanchions`, 0.5, gaps.length)
    }
    const verdict = verify(r.plan, r.line.id, r.places.pattern, layout, { time, ...models })
    if (!verdict.passes) {
      for (const reason of verdict.reasons) addTo(report.reasons, reason)
      return null
    }
    candidate = verdict.candidate
  }
  return candidate
}
