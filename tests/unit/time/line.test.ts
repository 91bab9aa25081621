/** Whole lines: the books close, the mesh does not matter, rest is the static answer, pulleys have no friction. */
import { describe, expect, it } from 'vitest'
import { lineLaw } from '../../../src/solver/line-law'
import { GRAVITY } from '../../../src/solver/model'
import type { TimeFall, TimeFallInput } from '../../../src/solver/time/types'
import { expectClose, solvedValue } from '../../support/close'
import { prove } from '../../support/proof'
import { FIRM_ABSORBER, fall, fallInput, lineModel, randomFall, worker } from './support'

const SEEDS = [11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22]

describe('seeded lines', () => {
  it.each(SEEDS)('seed %i: energy closes within 0.5 % and every figure is a number', (seed) => {
    const got = fall(randomFall(seed))
    expect(got.energyError, `seed ${seed}`).toBeLessThan(0.005)
    for (const v of figuresOf(got)) expect(Number.isFinite(v), `seed ${seed}`).toBe(true)
  })
})

const figuresOf = (f: TimeFall): number[] => {
  const w = f.workers[0]!
  return [
    f.tension,
    w.arrestForce,
    w.connectorExtension,
    w.lineDrop,
    w.totalFall,
    w.clearance,
    f.absorberExtension,
  ]
}

/** One span without an absorber and two with one, the second with two workers, off the middle. */
const lines: [string, TimeFallInput][] = [
  ['one span', fallInput(lineModel([12.2]), [worker(0, 6.1)], 'stiff')],
  [
    'two spans, absorber',
    fallInput(lineModel([9.1, 9.1], { absorber: FIRM_ABSORBER }), [worker(0, 4), worker(0, 4)]),
  ],
]

describe('halving the element and the step moves figures by less than 1 %', () => {
  it.each(lines)('%s', (_, input) => {
    const whole = fall(input)
    for (const finer of [fall(input, { element: 0.0625 }), fall(input, { step: 0.5 })]) {
      for (const [i, v] of figuresOf(finer).entries())
        expectClose(figuresOf(whole)[i], v, { rel: 0.01, abs: 0.002 }, `figure ${i}`)
    }
  })
})

describe('heavy damping ends in the static answer', () => {
  const cases: [string, number[], number, number][] = [
    ['one span, middle', [12.2], 0, 6.1],
    ['three spans, off the middle: the rope has run over its pulleys', [7, 10, 8], 1, 10.5],
  ]
  it.each(cases)('%s', (_, spans, span, x) => {
    const model = lineModel(spans)
    // A connector that does not tear, so that the line carries the body's weight on a spring.
    const w = worker(span, x, { connector: { stiffness: 60000, plateau: 1e6, maxExtension: 1 } })
    const input = fallInput(model, [w])
    const got = fall(input, { history: true, after: 2.5, drag: 12 })
    const h = got.history!
    const last = h.frames - 1
    const law = solvedValue(
      lineLaw(input.line as Parameters<typeof lineLaw>[0], span, x - model.x[span]!, 2000),
    )
    const rest = law.solve(100 * GRAVITY)!
    const node = h.attachedNode[0]!
    const drop = h.z[node]! - h.z[last * h.nodes + node]!
    prove({
      what: `drop at rest under 100 kg, ${spans.length} span(s)`,
      source: 'the exact elastic catenary of the line law (held against CalculiX)',
      expected: law.height - rest.height,
      got: drop,
      unit: 'm',
      rel: 0.005,
    })
    const tension = (e: number): number => h.tension[last * (h.nodes - 1) + e]!
    expectClose(tension(h.nodes - 2), rest.endTension, { rel: 0.01 }, 'tension at the absorber end')
    // End heads stand where their springs balance the rope: u = (H - H installed)/K.
    if (spans.length === 1) {
      const shift = input.line.headShift[0] + (rest.H - input.line.spans[0]!.H) / model.endStiffness[0]
      expectClose(h.headShift[2 * last], shift, { rel: 0.005 }, 'movement of the first head')
    }
    // Ideal pulleys: after the rope has run, tension is the same on both sides of each.
    for (const pulley of model.x.slice(1, -1)) {
      let after = 0
      while (h.x[last * h.nodes + after]! < pulley) after++
      expectClose(tension(after - 3), tension(after + 2), { rel: 5e-4 }, `sides of the pulley at ${pulley} m`)
    }
  })
})

it('a mirrored line gives mirrored results', () => {
  const model = lineModel([7, 10, 8], {
    absorber: FIRM_ABSORBER,
    absorberAt: 'start',
    endStiffness: [2e5, 4e5],
  })
  model.z = [1.07, 1.3, 1.2, 1.5]
  const mirrored = lineModel([8, 10, 7], {
    absorber: FIRM_ABSORBER,
    absorberAt: 'end',
    endStiffness: [4e5, 2e5],
  })
  mirrored.z = [...model.z].reverse()
  const length = 25
  // Any line element is at rest by the same exact catenaries, but for which head the pretension is set at.
  const one = fall(fallInput(model, [worker(1, 11)]))
  const other = fall(fallInput(mirrored, [worker(1, length - 11)]))
  for (const [i, v] of figuresOf(one).entries())
    expectClose(figuresOf(other)[i], v, { rel: 1e-4 }, `figure ${i}`)
  for (const [j, head] of one.heads.entries())
    expectClose(other.heads[3 - j]!.along, head.along, { rel: 2e-3, abs: 5 }, `head ${j}`)
})

it('slips several tenths of a metre over a pulley, and nodes go with it', () => {
  const model = lineModel([10, 10, 10], { absorber: FIRM_ABSORBER })
  const input = fallInput(model, [worker(0, 5), worker(0, 5)])
  const got = fall(input, { history: true, after: 0.3 })
  const h = got.history!
  // Nodes left of the first pulley at the start and at the greatest slip.
  const left = (f: number): number => {
    let n = 0
    for (let i = 0; i < h.nodes; i++) if (h.x[f * h.nodes + i]! < 10) n++
    return n
  }
  const counts = Array.from({ length: h.frames }, (_, f) => left(f))
  expect(Math.max(...counts) - counts[0]!).toBeGreaterThanOrEqual(3)
  expect(got.energyError).toBeLessThan(0.001)
})

it('held rope moves in the loaded span alone; the others pull as they did', () => {
  const model = lineModel([9, 9, 9])
  const input = fallInput(model, [worker(1, 13.5)], 'stiff', 'held')
  const got = fall(input, { history: true, after: 0.1 })
  const h = got.history!
  for (let i = 0; i < h.nodes; i++) {
    const x = h.x[i]!
    if (x > 9 && x < 18) continue
    expect(h.z[(h.frames - 1) * h.nodes + i]).toBe(h.z[i])
  }
  // The stanchion between gets the difference of the two pulls; the ends keep theirs.
  expectClose(got.heads[1]!.along, got.tension - input.line.spans[0]!.H, { rel: 0.05 }, 'middle stanchion')
  expectClose(got.heads[0]!.along, input.line.spans[0]!.H, { rel: 1e-9 }, 'end stanchion')
  const alone = fall(fallInput(lineModel([9, 9, 9]), [worker(1, 13.5)], 'stiff', 'sliding'))
  expect(got.tension).toBeGreaterThan(alone.tension)
})

describe('bad physics stays finite and is told', () => {
  it('an absorber that runs out', () => {
    const soft = { onset: { low: 5000, high: 5500 }, full: { low: 5600, high: 6000 }, maxExtension: 0.2 }
    const got = fall(fallInput(lineModel([12], { absorber: soft }), [worker(0, 6), worker(0, 6)]))
    expect(got.absorberRanOut).toBe(true)
    expect(got.absorberExtension).toBeGreaterThan(0.2)
    expect(got.energyError).toBeLessThan(0.005)
  })

  it('a nearly slack line', () => {
    const got = fall(fallInput(lineModel([12, 6], { pretension: 150 }), [worker(0, 6)]))
    expect(got.energyError).toBeLessThan(0.005)
    expect(got.workers[0]!.lineDrop).toBeGreaterThan(0.5)
  })

  it('a violent fall: 400 kg from 5 m on a connector that hardly tears', () => {
    const heavy = { mass: 400, surface: 4, connector: { stiffness: 2e5, plateau: 30000, maxExtension: 0.1 } }
    const got = fall(fallInput(lineModel([6, 6, 6]), [worker(1, 7, heavy)]))
    expect(got.energyError).toBeLessThan(0.005)
    expect(got.workers[0]!.connectorRanOut || got.workers[0]!.arrestForce < 30000).toBe(true)
  })
})
