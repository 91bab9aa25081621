/** The spread of a line's results where its uncertain figures vary: seeded quasi-random samples through the same solver. */
import type { Plan } from '../../plan/types'
import type { Models } from '../obstacles'
import { study } from '../study'
import { haltonPoints, MOST_DIMENSIONS } from './halton'
import { type SpreadInput, samplePlan, spreadInputs, USUAL_TOLERANCES } from './inputs'
import { runSample, SPREAD_RULES } from './sample'
import type { Distribution, SpreadResult, SpreadTask } from './types'

const METHOD =
  'Scrambled Halton points, every input evenly spread over its range and independent of the others; falls by energy at mid-span of every span and beside stanchions. What matters: first-order share of variance from conditional means in 25 bins.'

const BINS = 25

/** Share of the variance of y that the mean of y given x makes, less what chance alone would make of so many bins. */
function firstOrder(x: Float64Array, y: Float64Array): number {
  const order = Array.from(x.keys()).sort((a, b) => x[a]! - x[b]!)
  const mean = y.reduce((s, v) => s + v, 0) / y.length
  const total = y.reduce((s, v) => s + (v - mean) ** 2, 0)
  if (!(total > 0)) return 0
  const bins = Math.max(2, Math.min(BINS, Math.floor(y.length / 8)))
  let between = 0
  for (let b = 0; b < bins; b++) {
    const from = Math.floor((b * y.length) / bins)
    const to = Math.floor(((b + 1) * y.length) / bins)
    let sum = 0
    for (let i = from; i < to; i++) sum += y[order[i]!]!
    between += (to - from) * (sum / (to - from) - mean) ** 2
  }
  const chance = (bins - 1) / (y.length - 1)
  return Math.max(0, (between / total - chance) / (1 - chance))
}

function distribution(
  y: Float64Array,
  columns: Float64Array[],
  inputs: SpreadInput[],
  corner: number | null,
): Distribution {
  const sorted = Float64Array.from(y).sort()
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!
  const [low, high] = [sorted[0]!, sorted[sorted.length - 1]!]
  const width = (high - low) / 24 || 1
  const bins = Array.from({ length: 24 }, (_, i) => ({
    from: low + i * width,
    to: low + (i + 1) * width,
    count: 0,
  }))
  for (const v of y) bins[Math.min(23, Math.floor((v - low) / width))]!.count++
  const matters = inputs.map((input, i) => ({
    input: input.id,
    label: input.label,
    share: firstOrder(columns[i]!, y),
  }))
  return {
    corner,
    mean: y.reduce((s, v) => s + v, 0) / y.length,
    low,
    high,
    quantiles: [0.05, 0.5, 0.95, 0.99].map((share) => ({ share, value: at(share) })),
    bins,
    beyond: corner === null ? 0 : y.filter((v) => v > corner).length / y.length,
    matters: matters.sort((a, b) => b.share - a.share),
  }
}

/** Corner results by energy, and the clearance that is there: what the corner needs and the least gap below. */
function cornerOf(plan: Plan, lineId: string, models?: Models) {
  const line = plan.lines.find((l) => l.id === lineId)!
  const alone = { ...plan, lines: [line], workers: plan.workers.filter((w) => w.line === lineId) }
  const { lines, obstacles } = study(alone, { withoutTime: true, ...(models ? { models } : {}) }).results
  const gaps = obstacles.flatMap((o) => (o.gap === null ? [] : [o.gap]))
  const { clearance, tension } = lines[0]!.governing
  const room = clearance === null || gaps.length === 0 ? null : clearance + Math.min(...gaps)
  return { alone, clearance, tension, room }
}

/** Runs the samples; yields the share done. Null where the line has no crew or no sample could be computed. */
export function* spread(task: SpreadTask, models?: Models): Generator<number, SpreadResult | null> {
  const { plan, samples, seed } = task
  if (!plan.workers.some((w) => w.line === task.line)) return null
  const corner = cornerOf(plan, task.line, models)
  yield 0
  const inputs = spreadInputs(corner.alone, task.line, task.tolerances ?? USUAL_TOLERANCES).slice(
    0,
    MOST_DIMENSIONS,
  )
  const point = haltonPoints(inputs.length, seed)
  const rows: { values: number[]; clearance: number; tension: number }[] = []
  const counts = new Map<string, number>(SPREAD_RULES.map((r) => [r, 0]))
  for (let i = 0; i < samples; i++) {
    if (i % 25 === 24) yield i / samples
    const values = point(i).map((u, j) => inputs[j]!.low + u * (inputs[j]!.high - inputs[j]!.low))
    const got = runSample(samplePlan(corner.alone, task.line, inputs, values), corner.room)
    if (!got) continue
    rows.push({ values, clearance: got.clearance, tension: got.tension })
    for (const rule of got.fails) counts.set(rule, (counts.get(rule) ?? 0) + 1)
  }
  if (rows.length === 0) return null
  const columns = inputs.map((_, j) => Float64Array.from(rows, (r) => r.values[j]!))
  return {
    samples,
    seed,
    failed: samples - rows.length,
    clearance: distribution(
      Float64Array.from(rows, (r) => r.clearance),
      columns,
      inputs,
      corner.clearance,
    ),
    tension: distribution(
      Float64Array.from(rows, (r) => r.tension),
      columns,
      inputs,
      corner.tension,
    ),
    rules: [...counts].map(([rule, n]) => ({ rule, share: n / rows.length })),
    room: corner.room,
    inputs: inputs.map(({ id, label, low, high, unit }) => ({ id, label, low, high, unit })),
    method: METHOD,
  }
}

/** The whole spread at once, for papers and commands; see `spread` for the same with progress. */
export function spreadOf(task: SpreadTask, models?: Models): SpreadResult | null {
  const steps = spread(task, models)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}
