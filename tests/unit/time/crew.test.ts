/** Several bodies on one line: together, late, in turn, apart, unlike; and tied where the line cannot give. */
import { describe, expect, it } from 'vitest'
import { GRAVITY } from '../../../src/solver/model'
import { expectClose } from '../../support/close'
import { FIRM_ABSORBER, fall, fallInput, lineModel, worker } from './support'

const model = lineModel([9.1, 9.1], { absorber: FIRM_ABSORBER })

describe('together', () => {
  it('two equal bodies at one station are one of twice the mass on twice the connector', () => {
    const two = fall(fallInput(model, [worker(0, 4.5), worker(0, 4.5)]))
    const c = worker(0, 4.5).connector
    const double = { stiffness: 2 * c.stiffness, plateau: 2 * c.plateau, maxExtension: c.maxExtension }
    const one = fall(fallInput(model, [worker(0, 4.5, { mass: 200, connector: double })]))
    // The step differs by a hair, for the connectors count in it.
    expectClose(two.tension, one.tension, { rel: 1e-3 }, 'tension')
    expectClose(two.workers[0]!.arrestForce * 2, one.workers[0]!.arrestForce, { rel: 1e-3 }, 'force')
    expectClose(two.workers[1]!.lowest, one.workers[0]!.lowest, { abs: 1e-3 }, 'lowest')
  })

  it('unlike bodies apart: each gets its own figures, the books close', () => {
    const light = worker(0, 3, { mass: 70, length: 0.8 })
    const heavy = worker(1, 13, { mass: 130, type: 'retractable', length: 0.61, harnessStretch: 0.4 })
    const got = fall(fallInput(model, [light, heavy]))
    expect(got.energyError).toBeLessThan(0.005)
    const [a, b] = got.workers
    expectClose(a!.totalFall, b!.totalFall, { abs: 3 })
    expect(a!.freeFall).toBeGreaterThan(b!.freeFall)
    for (const w of [a!, b!]) expect(w.clearance).toBeGreaterThan(w.totalFall)
  })

  it('where the rope is held, falls in different spans do not know of each other', () => {
    const held = lineModel([9, 9, 9])
    const both = fall(fallInput(held, [worker(0, 4.5), worker(2, 22, { mass: 80 })], 'soft', 'held'))
    const first = fall(fallInput(held, [worker(0, 4.5)], 'soft', 'held'))
    const second = fall(fallInput(held, [worker(2, 22, { mass: 80 })], 'soft', 'held'))
    expectClose(both.workers[0]!.lowest, first.workers[0]!.lowest, { abs: 1e-3 })
    expectClose(both.workers[1]!.lowest, second.workers[0]!.lowest, { abs: 1e-3 })
    expectClose(both.tension, Math.max(first.tension, second.tension), { rel: 0.005 })
  })
})

describe('late', () => {
  it('a delay longer than the first arrest leaves that as it was', () => {
    const alone = fall(fallInput(model, [worker(0, 4.5)]))
    const late = fall(fallInput(model, [worker(0, 4.5), worker(1, 13.6, { delay: 1.2 })]))
    expectClose(late.workers[0]!.arrestForce, alone.workers[0]!.arrestForce, { rel: 0.02 })
    expect(late.workers[1]!.lowestAt).toBeGreaterThan(1.2)
    expect(late.energyError).toBeLessThan(0.005)
  })

  it('a tiny delay is as good as none', () => {
    const none = fall(fallInput(model, [worker(0, 4.5), worker(0, 4.5)]))
    const tiny = fall(fallInput(model, [worker(0, 4.5), worker(0, 4.5, { delay: 1e-4 })]))
    expectClose(tiny.tension, none.tension, { rel: 0.01 })
    expectClose(tiny.workers[1]!.lowest, none.workers[1]!.lowest, { abs: 0.005 })
    expectClose(tiny.workers[1]!.freeFall, none.workers[1]!.freeFall, { abs: 0.005 })
  })

  it('falls freely until taut: the free fall is longer where the line has sunk meanwhile', () => {
    const got = fall(fallInput(model, [worker(0, 4.5), worker(0, 4.5, { delay: 0.3 })]))
    expect(got.workers[1]!.freeFall).toBeGreaterThan(got.workers[0]!.freeFall + 0.05)
  })
})

describe('in turn', () => {
  it('the second falls from a line that hangs still under the first', () => {
    // The second's lanyard is long enough not to drag it off while the first falls.
    const workers = [worker(0, 4.5), worker(0, 4.5, { length: 1.8, surface: -0.6 })]
    const got = fall({ ...fallInput(model, workers), order: 'in-turn' }, { history: true, after: 0.5 })
    const h = got.history!
    const turn = h.times.findIndex((_, f) => h.connectorForce[2 * f + 1]! > 0)
    expectClose(h.connectorForce[2 * (turn - 2)], 100 * GRAVITY, { rel: 0.02 }, 'the first hangs')
    // The line is lower by what it gives under the first's weight: the second falls that much further.
    const node = h.attachedNode[1]!
    const sunk = h.z[node]! - h.z[(turn - 2) * h.nodes + node]!
    expect(sunk).toBeGreaterThan(0.1)
    expect(got.workers[1]!.pulledOff).toBe(false)
    expectClose(got.workers[1]!.freeFall - got.workers[0]!.freeFall, sunk, { abs: 0.01 })
    expect(got.energyError).toBeLessThan(0.005)
  })

  it('drags a standing worker off where the line sinks beyond the lanyard', () => {
    const short = worker(1, 13.6, { length: 0.7 })
    const input = fallInput(model, [worker(1, 13.6), worker(1, 13.6), short])
    const got = fall({ ...input, order: 'in-turn' })
    expect(got.workers.some((w) => w.pulledOff)).toBe(true)
  })
})

describe('beside a stanchion', () => {
  it('the line does not give, and nothing of it needs to move', () => {
    const got = fall(fallInput(model, [worker(0, 9.1)]))
    expect(got.workers[0]!.atStanchion).toBe(true)
    expect(got.workers[0]!.lineDrop).toBe(0)
    const input = fallInput(model, [worker(0, 9.1)])
    const rest = Math.max(...input.line.spans.map((s) => Math.hypot(s.H, s.V)))
    expectClose(got.tension, rest, { rel: 0.01 }, 'tension at rest')
    expect(got.heads[1]!.down).toBeGreaterThan(got.workers[0]!.arrestForce * 0.95)
  })

  it.each([9.0, 9.25])('close to it (%s m) the tie slips along, the pulley never passes it', (x) => {
    const got = fall(fallInput(model, [worker(x < 9.1 ? 0 : 1, x)]), { history: true, after: 0.3 })
    const h = got.history!
    for (let f = 0; f < h.frames; f++) {
      const at = h.x[f * h.nodes + h.attachedNode[0]!]!
      if (x < 9.1) expect(at).toBeLessThanOrEqual(9.1 + 1e-3)
      else expect(at).toBeGreaterThanOrEqual(9.1 - 1e-3)
    }
    expect(got.energyError).toBeLessThan(0.005)
  })
})
