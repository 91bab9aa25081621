/** Small seeded searches, and their answers by studying every layout there is, fewest stanchions first. */
import { readFileSync } from 'node:fs'
import { readPlan } from '../../src/plan/read'
import type { Plan } from '../../src/plan/types'
import { choicesOf } from '../../src/study/find/choices'
import { endPlaces, placesOf } from '../../src/study/find/places'
import { search } from '../../src/study/find/search'
import type { FindResult, FindTask } from '../../src/study/find/types'
import { verify } from '../../src/study/find/verify'
import { seeded } from './random'

const sample = readFileSync(new URL('../../samples/thin-margins.plan.json', import.meta.url), 'utf8')

function samplePlan(): Plan {
  const read = readPlan(sample)
  if (!read.ok) throw new Error(read.faults.map((f) => f.message).join('\n'))
  return read.plan
}

/** A short girder with few loops, one worker, limits and obstacles by chance so that some rule decides. */
export function smallTask(seed: number): FindTask {
  const r = seeded(seed)
  const plan = samplePlan()
  const girder = plan.girders.find((g) => g.id === plan.lines[0]!.girder)!
  const line = plan.lines[0]!
  const spacing = r.between(0.55, 0.75)
  const row = { ...girder.loops[0]!, first: 0.2, spacing, count: r.whole(22, 30) }
  const along = spacing * row.count + 0.4
  const slope = r.between(-0.03, 0.03)
  const { start } = girder
  girder.end = [start[0] + along, start[1], start[2] + slope * along]
  girder.start = [start[0], start[1], start[2]]
  girder.loops = [row]
  plan.girders = [girder]
  plan.decks = []
  const bracket = plan.parts.find((p) => p.kind === 'bracket')!
  if (bracket.kind === 'bracket') bracket.tubeLength = 4.2 * spacing
  const tieBack = plan.parts.find((p) => p.id === line.tieBacks[0]!.part)!
  if (tieBack.kind === 'tie-back') tieBack.length = 9
  plan.workers = [plan.workers.find((w) => w.line === line.id)!]
  line.stanchions[0]!.station = row.first + 4.5 * spacing
  line.stanchions.at(-1)!.station = row.first + (4.5 + r.whole(5, 7) + 4) * spacing
  line.workersAtOnce = r.next() < 0.3 ? 2 : 1
  line.grip = r.next() < 0.2 ? 'held' : 'sliding'
  line.pretension = r.between(1500, 6000)
  plan.basis.safetyFactor = r.between(2, 5)
  // Pretension is drawn freely: where the eye lies is not what these cases are about.
  plan.basis.eyeOffset = { low: 0, high: 9 }
  if (r.next() < 0.5) plan.basis.maxSpan = r.between(3, 9)
  else delete plan.basis.maxSpan
  const low = Math.min(girder.start[2], girder.end[2])
  const ground = {
    kind: 'ground' as const,
    id: 'ground',
    name: 'Ground',
    elevation: low - r.between(4, 5.2),
  }
  const x = start[0] + r.between(0.2, 0.7) * along
  const size = r.between(1, 3)
  const box = {
    kind: 'box' as const,
    id: 'box',
    name: 'Box',
    center: [x, start[1], low - 6] as [number, number, number],
    size: [size, size, 2 * (6 - r.between(3.6, 5))] as [number, number, number],
  }
  plan.obstacles = r.next() < 0.5 ? [ground] : [ground, box]
  const absorbers = r.next() < 0.4 ? [line.absorber, null] : [line.absorber]
  return { plan, line: line.id, absorbers, withoutTime: true, tries: 1000, aims: ['clearance', 'tension'] }
}

export interface OracleAnswer {
  stanchions: number | null
  /** Least clearance among layouts with as few, m. */
  clearance: number | null
  studied: number
}

function* subsets(from: number, to: number, count: number): Generator<number[]> {
  if (count === 0) yield []
  for (let a = from; count > 0 && a <= to - count; a++) {
    for (const rest of subsets(a + 1, to, count - 1)) yield [a, ...rest]
  }
}

/** Studies every layout of the same space, count by count up to `most`. */
export function bruteForce(task: FindTask, most = 5): OracleAnswer {
  const line = task.plan.lines.find((l) => l.id === task.line)!
  const places = placesOf(task.plan, line)!
  const end = (index: number, side: 1 | -1) =>
    endPlaces(
      task.plan,
      line,
      places,
      { station: line.stanchions.at(index)!.station, outside: false },
      side,
      1,
      1,
    ).ends[0]
  const [a, b] = [end(0, -1), end(-1, 1)]
  if (!a || !b) return { stanchions: null, clearance: null, studied: 0 }
  let studied = 0
  for (let k = 2; k <= most; k++) {
    let clearance = Number.POSITIVE_INFINITY
    for (const choice of choicesOf(task, line)) {
      for (const inner of subsets(a.gap + 1, b.gap, k - 2)) {
        const gaps = [a.gap, ...inner, b.gap]
        const stations = gaps.map((g) => places.stations[g]!)
        const layout = { gaps, stations, feet: [a.feet[0]!, b.feet[0]!] as [never, never], choice }
        const verdict = verify(task.plan, task.line, places.pattern, layout, { time: false })
        studied++
        if (verdict.passes) clearance = Math.min(clearance, verdict.candidate!.clearance!)
      }
    }
    if (clearance < Number.POSITIVE_INFINITY) return { stanchions: k, clearance, studied }
  }
  return { stanchions: null, clearance: null, studied }
}

/** The search's answer, or null once it has to look at more than `most` stanchions, where brute force stops too. */
export function searchUpTo(task: FindTask, most: number): FindResult | null {
  const steps = search(task)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
    if (!step.value.best && (step.value.stanchions ?? 0) > most) return null
  }
}
