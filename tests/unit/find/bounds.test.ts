import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { readPlan } from '../../../src/plan/read'
import type { Line, Plan } from '../../../src/plan/types'
import { midSpanFalls } from '../../../src/study/energy-falls'
import { spanBounds } from '../../../src/study/find/bound/span-bound'
import { reachesAt } from '../../../src/study/floor'
import { lineInput } from '../../../src/study/line-input'
import { lineStatics } from '../../../src/study/line-statics'
import { seeded } from '../../support/random'

const text = readFileSync(new URL('../../../samples/thin-margins.plan.json', import.meta.url), 'utf8')

function sample(): Plan {
  const read = readPlan(text)
  if (!read.ok) throw new Error('the sample does not read')
  return read.plan
}

/** A line of the sample with random stations, slope, pretension, grip and crew. */
function randomLine(seed: number): { plan: Plan; line: Line; longest: number } {
  const r = seeded(seed)
  const plan = sample()
  const line = plan.lines[0]!
  const girder = plan.girders.find((g) => g.id === line.girder)!
  girder.end = [girder.end[0], girder.end[1], girder.start[2] + r.between(-1.5, 1.5)]
  const spans = r.whole(1, 5)
  const like = line.stanchions[1]!
  let station = 2
  line.stanchions = Array.from({ length: spans + 1 }, (_, i) => {
    station += i === 0 ? 0 : r.between(1, 6)
    return { ...like, id: `S${i}`, role: i === 0 || i === spans ? 'end' : 'intermediate', station }
  })
  line.tieBacks = []
  line.pretension = r.between(800, 7000)
  line.grip = r.next() < 0.25 ? 'held' : 'sliding'
  line.absorberAt = r.next() < 0.5 ? 'start' : 'end'
  if (r.next() < 0.3) line.absorber = null
  line.workersAtOnce = r.whole(1, 2)
  return { plan, line, longest: 6.01 }
}

const SEEDS = 40

it(`no span does better than its bound says (seeds 0 to ${SEEDS - 1})`, () => {
  let bounded = 0
  let closest = 0
  for (let seed = 0; seed < SEEDS; seed++) {
    const { plan, line, longest } = randomLine(seed)
    const input = lineInput(plan, line)
    const statics = lineStatics(input.model)
    const ends = { ...line, stanchions: [line.stanchions[0]!, line.stanchions.at(-1)!] }
    const bounds = spanBounds({ input: lineInput(plan, ends), longest })
    const falls = midSpanFalls(input, statics).filter((c) => c.corner.grip === input.grip)
    for (let span = 0; span + 1 < input.stanchions.length; span++) {
      const X = input.geometry.x[span + 1]! - input.geometry.x[span]!
      const bound = bounds.midSpan(X)
      const worst = Math.max(
        ...falls
          .filter((c) => c.span === span)
          .map((c) => (c.fall.ok ? (c.fall.value.tension ?? 0) : Number.POSITIVE_INFINITY)),
      )
      const where = `seed ${seed}, span ${span}`
      if (bound.tension !== null) {
        bounded++
        expect(bound.tension, where).toBeLessThanOrEqual(worst * (1 + 2e-4))
        closest = Math.max(closest, bound.tension / worst)
      }
      const middle = (input.geometry.stations[span]! + input.geometry.stations[span + 1]!) / 2
      const rest = {
        left: input.geometry.x[span]!,
        right: input.geometry.x.at(-1)! - input.geometry.x[span + 1]!,
      }
      const placed = bounds.reaches({ X, at: X / 2, rest })
      const reaches = reachesAt(input, statics, middle, plan.basis.marginBelow)
      if (typeof reaches === 'string') continue
      for (const b of [...bound.reaches, ...placed]) {
        const same = reaches.filter(
          (r) => r.worker.id === b.worker.id && r.line === 'soft' && r.end === b.end,
        )
        const depth = (r: { drop: number; extension: number; height: number }): number =>
          r.drop + r.extension - r.height
        expect(same.length).toBe(1)
        expect(depth(b), where).toBeLessThanOrEqual(depth(same[0]!) + 5e-4)
      }
    }
  }
  expect(bounded).toBeGreaterThan(SEEDS)
  // Loose bounds prove nothing: they come near too.
  expect(closest).toBeGreaterThan(0.98)
})
