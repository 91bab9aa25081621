/**
 * The search for the layout with fewest stanchions. Counts are tried upwards: the bounds leave only spans that could
 * pass somewhere; a count without a path of such spans is proven not to pass. What is left is studied whole, first by
 * energy, then with the falls in time. A generator: each step is a moment at which the caller may look, or stop.
 */
import type { Line, Plan } from '../../plan/types'
import { say } from '../../rules/words'
import type { Models } from '../obstacles'
import { type SearchCase, searchCase } from './case'
import { choiceStops, choicesOf, choiceWords } from './choices'
import { countReasons } from './count-reasons'
import { layouts, leastCost } from './paths'
import { type EndPlace, endPlaces, type Places, placesOf } from './places'
import { better, closeTo } from './rank'
import type { Aim, Candidate, CountReport, FindProgress, FindResult, FindTask, Reason } from './types'
import { verify } from './verify'

export type Search = Generator<FindProgress, FindResult>

const AIMS: Aim[] = ['parts', 'clearance', 'tension']
/** Layouts studied whole for one count before the search stops claiming. */
const TRIES = 12
/** Counts tried above the least that the bounds allow. */
const MORE_COUNTS = 8

interface Running {
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

const progress = (r: Running, doing: string, done: number, stanchions: number | null): FindProgress => ({
  doing,
  done,
  stanchions,
  studied: r.studied,
  best: r.best,
  counts: r.counts,
})

const nothing = (reasons: Reason[], space: string[] = []): FindResult => ({
  outcome: 'none',
  best: null,
  alternatives: [],
  counts: [],
  claims: { fewest: 'not proven', least: 'not proven' },
  space,
  reasons,
})

/** Searches a layout for one line of a plan that `readPlan` has accepted. */
export function* search(task: FindTask, models?: Models): Search {
  const line = task.plan.lines.find((l) => l.id === task.line)
  if (!line) return nothing([{ rule: 'line', text: `The plan has no line ${task.line}.` }])
  const places = placesOf(task.plan, line)
  if (!places) {
    const text = 'The line’s brackets lie in no row of loops, so there are no gaps to stand in.'
    return nothing([{ rule: 'loops-engaged', text }])
  }
  const ends = endsOf(task, line, places)
  if (ends.reasons.length > 0) return nothing(ends.reasons)
  const r: Running = {
    task,
    plan: task.plan,
    line,
    places,
    aims: task.aims ?? AIMS,
    models,
    best: null,
    passing: [],
    counts: [],
    studied: 0,
    least: true,
  }
  const { cases, reasons } = yield* casesOf(r, ends.first, ends.last)
  const space = spaceWords(r, ends.first, ends.last)
  if (cases.length === 0) return nothing(reasons, space)
  return yield* counted(r, cases, reasons, space)
}

function endsOf(task: FindTask, line: Line, places: Places) {
  const count = task.ends ?? 1
  const feet = task.feet ?? 1
  const at = (station: number | undefined, index: number) => ({
    station: station ?? line.stanchions.at(index)!.station,
    outside: station !== undefined,
  })
  const first = endPlaces(task.plan, line, places, at(task.from, 0), -1, count, feet)
  const last = endPlaces(task.plan, line, places, at(task.to, -1), 1, count, feet)
  return { first: first.ends, last: last.ends, reasons: [...first.reasons, ...last.reasons] }
}

/** All cases: choices that can pass at all, between every pair of ends. */
function* casesOf(
  r: Running,
  first: EndPlace[],
  last: EndPlace[],
): Generator<FindProgress, { cases: SearchCase[]; reasons: Reason[] }> {
  const wanted = choicesOf(r.task, r.line).flatMap((choice) =>
    first.flatMap((a) =>
      last.flatMap((b) =>
        a.gap >= b.gap
          ? []
          : a.feet.flatMap((f, i) => (b.feet[i] ? [{ choice, a, b, feet: [f, b.feet[i]!] }] : [])),
      ),
    ),
  )
  const cases: SearchCase[] = []
  const reasons: Reason[] = []
  for (const [i, w] of wanted.entries()) {
    const feet = w.feet as [EndPlace['feet'][number], EndPlace['feet'][number]]
    const ends: [number, number] = [w.a.gap, w.b.gap]
    const stations = ends.map((g) => r.places.stations[g]!)
    const bare = choiceStops(r.plan, r.line.id, r.places.pattern, {
      gaps: ends,
      stations,
      feet,
      choice: w.choice,
    })
    for (const b of bare) if (!reasons.some((x) => x.text === b.text)) reasons.push(b)
    if (bare.length > 0) continue
    const { plan, places, aims, models } = r
    const steps = searchCase({ plan, line: r.line.id, places, choice: w.choice, ends, feet, aims, models })
    let step = steps.next()
    while (!step.done) {
      yield progress(r, 'Bounding spans', (0.5 * (i + step.value)) / wanted.length, null)
      step = steps.next()
    }
    cases.push(step.value)
  }
  if (wanted.length === 0) {
    reasons.push({
      rule: 'end-tie-back',
      text: 'The two ends of the stretch leave no room for a line between them.',
    })
  }
  return { cases, reasons }
}

function* counted(r: Running, cases: SearchCase[], reasons: Reason[], space: string[]): Search {
  const known = cases.flatMap((c) => (c.fewest === null ? [] : [c.fewest + 1]))
  const start = known.length > 0 ? Math.min(...known) : null
  const last = (start ?? 2) + MORE_COUNTS
  for (let k = 2; k < (start ?? last); k++) {
    r.counts.push({
      stanchions: k,
      status: 'none passes',
      studied: 0,
      reasons: countReasons(r.plan, r.places, cases, k),
    })
  }
  if (start === null) {
    const why = r.counts.at(-1)?.reasons ?? []
    return { ...nothing([...why, ...reasons], space), counts: r.counts.slice(-1) }
  }
  for (let k = start; k <= last; k++) {
    const report = yield* oneCount(r, cases, k)
    r.counts.push(report)
    if (report.status === 'passes') return finished(r, k, space)
  }
  const why = r.counts.at(-1)?.reasons ?? []
  return { ...nothing([...why, ...reasons], space), counts: r.counts }
}

function finished(r: Running, k: number, space: string[]): FindResult {
  const fewer = r.counts.filter((c) => c.stanchions < k)
  const fewest = fewer.every((c) => c.status === 'none passes') ? 'proven' : 'not proven'
  const alternatives = [...r.passing].sort((a, b) => (better(a, b, r.aims) ? -1 : 1)).slice(0, 8)
  const claims = { fewest, least: r.least ? 'proven' : 'not proven' } as const
  return { outcome: 'found', best: r.best, alternatives, counts: r.counts, claims, space, reasons: [] }
}

/** Layouts with exactly k stanchions: case by case, the least cost first. */
function* oneCount(r: Running, cases: SearchCase[], k: number): Generator<FindProgress, CountReport> {
  const report: CountReport = { stanchions: k, status: 'none passes', studied: 0, reasons: [] }
  const able = cases.filter((c) => c.fewest !== null && c.fewest < k)
  const order = able
    .map((c) => ({ c, cost: leastCost(c.graph, k - 1) }))
    .filter((x) => x.cost !== null)
    .sort((a, b) => a.cost! - b.cost!)
  let whole = true
  for (const { c } of order) whole = (yield* oneCase(r, c, k, report)) && whole
  if (report.status === 'passes') r.least = r.least && whole
  else if (!whole) report.status = 'not proven'
  if (report.status !== 'passes') {
    const bounds = countReasons(r.plan, r.places, cases, k)
    for (const b of bounds) if (!report.reasons.some((x) => x.rule === b.rule)) report.reasons.push(b)
  }
  return report
}

/** One case at one count; true where all its layouts were looked at or can't be better than what passes. */
function* oneCase(
  r: Running,
  c: SearchCase,
  k: number,
  report: CountReport,
): Generator<FindProgress, boolean> {
  const tries = r.task.tries ?? TRIES
  const why = new Set<string>()
  const rulesOut = (a: number, b: number): boolean => {
    const reason = c.ruledOut(a, b)
    if (reason && !why.has(reason.rule)) {
      why.add(reason.rule)
      if (!report.reasons.some((x) => x.rule === reason.rule)) report.reasons.push(reason)
    }
    return reason !== null
  }
  let here: Candidate | null = null
  const limit = (): number => (here ? closeTo(here, r.aims) : Number.POSITIVE_INFINITY)
  let tried = 0
  for (const gaps of layouts(c.graph, k - 1, rulesOut, limit)) {
    const share = 0.5 + 0.5 * Math.min(1, report.studied / (tries * 2))
    yield progress(r, `Studying layouts with ${k} stanchions`, share, k)
    if (tried >= tries) return false
    tried++
    const found = studyOne(r, c, gaps, report)
    if (!found) continue
    report.status = 'passes'
    r.passing.push(found)
    if (!here || better(found, here, r.aims)) here = found
    if (!r.best || better(found, r.best, r.aims)) r.best = found
    yield progress(r, `Studying layouts with ${k} stanchions`, share, k)
  }
  return true
}

/** Studies a layout by energy, then with the falls in time; what stops it goes into the report. */
function studyOne(r: Running, c: SearchCase, gaps: number[], report: CountReport): Candidate | null {
  const layout = c.layout(gaps)
  const models = r.models ? { models: r.models } : {}
  report.studied++
  r.studied++
  for (const time of r.task.withoutTime ? [false] : [false, true]) {
    const verdict = verify(r.plan, r.line.id, r.places.pattern, layout, { time, ...models })
    if (verdict.passes && (time || r.task.withoutTime)) return verdict.candidate
    if (verdict.passes) continue
    for (const reason of verdict.reasons) {
      if (!report.reasons.some((x) => x.rule === reason.rule)) report.reasons.push(reason)
    }
    return null
  }
  return null
}

/** What was looked at, in words. */
function spaceWords(r: Running, first: EndPlace[], last: EndPlace[]): string[] {
  const { units } = r.plan
  const at = (ends: EndPlace[]): string =>
    ends.map((e) => say(r.places.stations[e.gap]!, 'm', units)).join(' or ')
  const feet = Math.max(...first.map((e) => e.feet.length), ...last.map((e) => e.feet.length))
  const choices = choicesOf(r.task, r.line).map((c) => choiceWords(r.plan, c, say(c.pretension, 'N', units)))
  return [
    `Stanchions midway between loops, all alike; first at ${at(first)}, last at ${at(last)}.`,
    `Tie-backs on neighbouring loops${feet > 1 ? `, ${feet} pairs at each end, equally far out at both` : ', the nearest pair that passes'}.`,
    ...choices.map((c, i) => `Parts ${i + 1}: ${c}.`),
    ...(r.task.withoutTime ? ['By the energy method alone; the falls in time were left out.'] : []),
  ]
}
