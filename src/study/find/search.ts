/**
 * The search for the layout with fewest stanchions. Counts are tried upwards: the bounds leave only spans that could
 * pass somewhere; a count without a path of such spans is proven not to pass. What is left is studied whole, first by
 * energy, then with the falls in time. A generator: each step is a moment at which the caller may look, or stop.
 */
import type { Line } from '../../plan/types'
import { say } from '../../rules/words'
import type { Models } from '../obstacles'
import { type SearchCase, searchCase } from './case'
import { choiceStops, choicesOf, choiceWords } from './choices'
import { alternativesOf, oneMore } from './compare'
import { oneCount, progress, type Running } from './count'
import { countReasons } from './count-reasons'
import { type EndPlace, endPlaces, type Places, placesOf } from './places'
import type { Aim, FindProgress, FindResult, FindTask, Reason } from './types'

export type Search = Generator<FindProgress, FindResult>

const AIMS: Aim[] = ['parts', 'clearance', 'tension']
/** Counts tried above the least that the bounds allow. */
const MORE_COUNTS = 8

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
    if (report.status !== 'passes') continue
    yield* oneMore(r, cases, k + 1)
    return finished(r, k, space)
  }
  const why = r.counts.at(-1)?.reasons ?? []
  return { ...nothing([...why, ...reasons], space), counts: r.counts }
}

function finished(r: Running, k: number, space: string[]): FindResult {
  const fewer = r.counts.filter((c) => c.stanchions < k)
  const fewest = fewer.every((c) => c.status === 'none passes') ? 'proven' : 'not proven'
  const alternatives = alternativesOf(r.passing, r.aims)
  const claims = { fewest, least: r.least ? 'proven' : 'not proven' } as const
  return { outcome: 'found', best: r.best, alternatives, counts: r.counts, claims, space, reasons: [] }
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
