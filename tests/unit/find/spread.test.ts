import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readPlan } from '../../../src/plan/read'
import type { Plan } from '../../../src/plan/types'
import { energyFindings } from '../../../src/study/find/quick'
import { haltonPoints } from '../../../src/study/spread/halton'
import { samplePlan, spreadInputs, USUAL_TOLERANCES } from '../../../src/study/spread/inputs'
import { runSample, SPREAD_RULES } from '../../../src/study/spread/sample'
import { spread } from '../../../src/study/spread/spread'
import type { SpreadResult } from '../../../src/study/spread/types'

import { expectClose } from '../../support/close'

const read = (name: string): Plan => {
  const got = readPlan(readFileSync(new URL(`../../../samples/${name}.plan.json`, import.meta.url), 'utf8'))
  if (!got.ok) throw new Error('the sample does not read')
  return got.plan
}

function run(plan: Plan, samples: number, seed: number): SpreadResult {
  const steps = spread({ plan, line: plan.lines[0]!.id, samples, seed })
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value!
  }
}

describe('points', () => {
  it('fill every axis evenly: no tenth of 2,000 points is off by more than a fifth', () => {
    const point = haltonPoints(16, 7)
    const points = Array.from({ length: 2000 }, (_, i) => point(i))
    for (let j = 0; j < 16; j++) {
      for (let k = 0; k < 10; k++) {
        const count = points.filter((p) => Math.floor(10 * p[j]!) === k).length
        expect(Math.abs(count - 200), `axis ${j}, tenth ${k}`).toBeLessThan(40)
      }
    }
  })

  it('integrate a product of eight axes far better than chance would (the integral is 1)', () => {
    const point = haltonPoints(8, 3)
    let sum = 0
    for (let i = 0; i < 4000; i++) sum += point(i).reduce((p, u) => p * (0.5 + u), 1)
    // Chance would be off by about 0.014 here: the product's deviation 0.93 over the root of 4,000.
    expect(Math.abs(sum / 4000 - 1)).toBeLessThan(0.01)
  })
})

describe('spread', () => {
  const plan = read('thin-margins')

  it('is the same for the same seed and another for another', () => {
    const a = run(plan, 40, 5)
    expect(run(plan, 40, 5)).toEqual(a)
    expect(run(plan, 40, 6).tension.mean).not.toBe(a.tension.mean)
  })

  it('says of a sample what the rules say of it', () => {
    for (const name of ['thin-margins', 'much-to-put-right']) {
      const whole = read(name)
      const line = whole.lines[0]!
      const alone = { ...whole, lines: [line], workers: whole.workers.filter((w) => w.line === line.id) }
      const inputs = spreadInputs(alone, line.id, USUAL_TOLERANCES)
      const point = haltonPoints(inputs.length, 11)
      for (let i = 0; i < 8; i++) {
        const values = point(i).map((u, j) => inputs[j]!.low + u * (inputs[j]!.high - inputs[j]!.low))
        const sample = samplePlan(alone, line.id, inputs, values)
        const told = new Set(
          energyFindings(sample, sample.lines[0]!)
            .filter((f) => f.status === 'fail')
            .map((f) => f.rule),
        )
        const wanted = SPREAD_RULES.filter((r) => r !== 'obstacle-gap' && told.has(r))
        expect([...runSample(sample, null)!.fails].sort(), `${name}, sample ${i}`).toEqual([...wanted].sort())
      }
    }
  })

  it('needs no more loads per line law than it takes: clearance to 0.1 mm, tension to 1e-5', () => {
    const line = plan.lines[0]!
    const inputs = spreadInputs(plan, line.id, USUAL_TOLERANCES)
    const point = haltonPoints(inputs.length, 2)
    for (let i = 0; i < 20; i++) {
      const values = point(i).map((u, j) => inputs[j]!.low + u * (inputs[j]!.high - inputs[j]!.low))
      const sample = samplePlan(plan, line.id, inputs, values)
      const [few, many] = [runSample(sample, 4)!, runSample(sample, 4, 60)!]
      expectClose(few.clearance, many.clearance, { abs: 1e-4 })
      expectClose(few.tension, many.tension, { rel: 1e-5 })
      expect(few.fails).toEqual(many.fails)
    }
  })

  it('stays within the corners where only what they cover varies', () => {
    const result = run(plan, 60, 1)
    // Mass, D-ring height and stations go beyond the corners: a few per cent, no more.
    expect(result.tension.high).toBeLessThan(result.tension.corner! * 1.05)
    expect(result.clearance.quantiles[1]!.value).toBeLessThan(result.clearance.corner!)
    expect(result.failed).toBe(0)
  })
})
