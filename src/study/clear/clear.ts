/**
 * What would clear an obstacle: one to three more stanchions in the span that governs, a shorter connector, a higher
 * pretension. Each is found by computing the line again, by energy; what its falls in time add now is taken off as well.
 */
import type { Line, Plan } from '../../plan/types'
import type { Models } from '../obstacles'
import type { Results } from '../results'
import { type Study, study } from '../study'
import { longestConnector, spanOf, withConnector, withPretension, withStanchions } from './change'
import type { ClearTask, ClearWay } from './types'

/** Connectors are not tried shorter than this, m, nor pretensions higher than this many times the present one. */
const SHORTEST = 0.3
const HIGHEST = 4
const MOST_STANCHIONS = 3

interface Case {
  task: ClearTask
  line: Line
  models: Models
  /** What the falls in time add to the room now, m. */
  excess: number
  /** Rules that fail now. */
  failing: Set<string>
}

const keyOf = (f: { rule: string; subject: string }): string => `${f.rule} ${f.subject}`

/** The plan with only the line in question: other lines neither help nor hinder. */
const alone = (plan: Plan, line: string): Plan => ({
  ...plan,
  lines: plan.lines.filter((l) => l.id === line),
  workers: plan.workers.filter((w) => w.line === line),
})

const studied = (c: Case, plan: Plan): Study =>
  study(alone(plan, c.line.id), { withoutTime: true, models: c.models })

/** Gap of the obstacle in a study, m; null where it is not known; infinite where nothing is shared any more. */
function gapIn(c: Case, made: Study): number | null {
  const found = made.results.obstacles.find((o) => o.id === c.task.obstacle)
  if (!found || found.unknown !== undefined) return null
  return found.gap === null ? Number.POSITIVE_INFINITY : found.gap - c.excess
}

const excessOf = (results: Results | null, line: string): number =>
  (results?.lines.find((l) => l.id === line)?.floor ?? []).reduce(
    (most, f) => Math.max(most, f.excess ?? 0),
    0,
  )

/**
 * Tries the three ways, telling each as it is found. `results` are those of the plan as it stands, for what falls in time
 * add. A generator, so that whoever runs it can stop between two computations.
 */
export function* clearWays(
  task: ClearTask,
  results: Results | null,
  models: Models = new Map(),
): Generator<{ way: ClearWay | null; share: number }, void, void> {
  const line = task.plan.lines.find((l) => l.id === task.line)
  const gap = results?.obstacles.find((o) => o.id === task.obstacle)
  if (!line || !gap) return
  const c: Case = { task, line, models, excess: excessOf(results, line.id), failing: new Set() }
  const now = studied(c, task.plan)
  c.failing = new Set(now.results.findings.filter((f) => f.status === 'fail').map(keyOf))
  const station = now.results.obstacles.find((o) => o.id === task.obstacle)?.station ?? gap.station
  yield* stanchions(c, station ?? line.stanchions[0]!.station)
  yield* search(c, 'connector', longestConnector(task.plan, line), SHORTEST, (v) =>
    withConnector(task.plan, line, v),
  )
  yield* search(c, 'pretension', line.pretension, line.pretension * HIGHEST, (v) =>
    withPretension(task.plan, line, v),
  )
}

function* stanchions(c: Case, station: number): Generator<{ way: ClearWay | null; share: number }> {
  const from = c.line.stanchions.length
  let best: ClearWay | null = null
  for (let more = 1; more <= MOST_STANCHIONS; more++) {
    const plan = withStanchions(c.task.plan, c.line, spanOf(c.line, station), more)
    if (!plan) break
    const way = tried(c, 'stanchions', more, from, plan)
    if (way) best = way
    yield { way: null, share: more * 0.1 }
    if (way?.clears) break
  }
  yield { way: best, share: 0.34 }
}

/** Narrows between what is and the most that is tried to the least change that clears, to a hundredth of the range. */
function* search(
  c: Case,
  kind: ClearWay['kind'],
  from: number,
  most: number,
  change: (value: number) => Plan,
): Generator<{ way: ClearWay | null; share: number }> {
  const base = kind === 'connector' ? 0.34 : 0.67
  if ((most - from) * (kind === 'connector' ? -1 : 1) <= 0) return
  const value = (t: number): number => rounded(kind, from + (most - from) * t)
  const end = tried(c, kind, value(1), from, change(value(1)))
  yield { way: null, share: base + 0.05 }
  if (!end?.clears) {
    yield { way: end, share: base + 0.33 }
    return
  }
  let best = end
  let [low, high] = [0, 1]
  for (let i = 0; i < 7; i++) {
    const mid = (low + high) / 2
    const way = tried(c, kind, value(mid), from, change(value(mid)))
    if (way?.clears) [best, high] = [way, mid]
    else low = mid
    yield { way: null, share: base + 0.05 + i * 0.04 }
  }
  yield { way: best, share: base + 0.33 }
}

/** To what one can cut or set: 10 mm shorter, 50 N more. */
const rounded = (kind: ClearWay['kind'], v: number): number =>
  kind === 'connector' ? Math.floor(v * 100 + 1e-6) / 100 : Math.ceil(v / 50 - 1e-6) * 50

function tried(c: Case, kind: ClearWay['kind'], value: number, from: number, plan: Plan): ClearWay | null {
  const made = studied(c, plan)
  const gap = gapIn(c, made)
  if (gap === null) return null
  const alsoFails = made.results.findings
    .filter((f) => f.status === 'fail' && !c.failing.has(keyOf(f)) && f.subject !== c.task.obstacle)
    .map(({ rule, subject }) => ({ rule, subject }))
  return { kind, value, from, gap, clears: gap >= 0, alsoFails, plan }
}
