import { describe, expect, it } from 'vitest'
import { expectClose } from '../../../tests/support/close'
import { sample } from '../../../tests/support/sample'
import type { MeshObstacle, Plan } from '../../plan/types'
import { lineInput } from '../line-input'
import { lineStatics } from '../line-statics'
import { timeFallAt } from '../time-falls'
import { type DropRequest, type DropStudy, dropWorkers, seriesOf } from '.'

const CORNER = { line: 'soft', connector: 'low', grip: 'sliding' } as const

/** Mid-span of the first span, the plan's first worker. */
function request(plan: Plan, more: Partial<DropRequest> = {}): DropRequest {
  const [a, b] = plan.lines[0]!.stanchions
  const worker = plan.workers.find((w) => w.line === plan.lines[0]!.id)!.id
  const drops = [{ worker, station: (a!.station + b!.station) / 2, delay: 0 }]
  return { line: plan.lines[0]!.id, drops, order: 'together', corner: CORNER, ...more }
}

function dropped(plan: Plan, more: Partial<DropRequest> = {}): DropStudy {
  const got = dropWorkers(plan, request(plan, more))
  if (!got.ok) throw new Error(got.why)
  return got.value
}

const thin = sample('thin-margins')
const one = dropped(thin)

describe('a dropped worker', () => {
  it('has the figures of the study’s own fall in time at mid-span', () => {
    const input = lineInput(thin, thin.lines[0]!)
    const own = timeFallAt(input, lineStatics(input.model), thin.basis, CORNER, 0, input.workers[0]!).fall
    const { dynamic } = one.workers[0]!
    for (const figure of [
      'tension',
      'arrestForce',
      'totalFall',
      'clearance',
      'lineDrop',
      'freeFall',
    ] as const)
      expectClose(dynamic[figure]!, own[figure]!, { rel: 1e-9 })
  })

  it('falls freely from standing until its connector is taut: z0 - g t^2/2', () => {
    const h = one.fall.history!
    const steps = one.workers[0]!.moments.find((m) => m.what === 'steps off')!
    const { dRingHeight } = thin.workers.find((w) => w.id === one.request.drops[0]!.worker)!
    const standing = one.workers[0]!.surface + dRingHeight
    expectClose(h.workerZ[0]!, standing, { abs: 2e-3 })
    for (let f = 0; h.times[f]! < 0; f++) {
      const t = Math.max(0, h.times[f]! - steps.at)
      expectClose(h.workerZ[f]!, standing - (9.80665 * t * t) / 2, { abs: 3e-3 })
      expect(h.connectorForce[f]).toBe(0)
    }
  })

  it('keeps the energy of the free fall in the books', () => {
    const { kinetic, potential, elastic, lost } = seriesOf(one)!.energies
    const h = one.fall.history!
    const sum = (f: number): number => kinetic[f]! + potential[f]! + elastic[f]! + lost[f]!
    const brought = 9.80665 * 100 * one.workers[0]!.dynamic.freeFall!
    for (let f = 1; f < h.frames; f++) expectClose(sum(f), sum(0), { abs: 0.01 * brought })
  })

  it('hangs still between its lowest point and where it stood, over what is beneath', () => {
    const { rest, dynamic, surface } = one.workers[0]!
    expect(rest!.dRing).toBeGreaterThan(one.fall.workers[0]!.lowest)
    expect(rest!.belowEdge).toBeGreaterThan(0)
    expect(rest!.belowEdge).toBeLessThan(dynamic.totalFall!)
    expect(rest!.under[0]!.top).toBeLessThan(surface)
  })

  it('swings as a pendulum: drop = r (1 - cos a), v^2 = 2 g drop', () => {
    const swing = one.workers[0]!.swing!
    const drop = swing.radius - Math.sqrt(swing.radius ** 2 - swing.offset ** 2)
    expectClose(swing.drop, drop, { rel: 1e-9 })
    expectClose(swing.speed, Math.sqrt(2 * 9.80665 * drop), { rel: 1e-9 })
  })
})

describe('a fall that does not hold', () => {
  it('strikes a box on its way and ends there', () => {
    const forms = dropped(sample('much-to-put-right'))
    const strike = forms.workers[0]!.strikes!
    expect(strike.what.id).toBe('forms')
    expect(strike.speed).toBeGreaterThan(0)
    expect(forms.ends).toEqual({ at: strike.at, why: expect.stringContaining('strikes') })
  })

  it('strikes the ground where the ground is a model, and names the model where it was not read', () => {
    const [x, y, z] = thin.girders[0]!.start
    const ground: MeshObstacle = {
      id: 'hill',
      name: 'hill',
      kind: 'mesh',
      file: 'hill.stl',
      at: [x, y, z - 3],
    }
    const plan: Plan = { ...thin, obstacles: [ground] }
    const flat = [-200, -200, 0, 200, -200, 0, 0, 400, 0]
    const models = new Map([
      ['hill.stl', { ok: true, value: { triangles: Float32Array.from(flat) } } as const],
    ])
    const got = dropWorkers(plan, request(plan), { models })
    if (!got.ok) throw new Error(got.why)
    expect(got.value.workers[0]!.strikes!.what.id).toBe('hill')
    expect(got.value.ends!.why).toContain('strikes hill')
    const blind = dropped(plan).workers[0]!
    expect(blind.strikes).toBeNull()
    expect(blind.rest!.unlooked).toEqual(['hill'])
  })

  it('runs a connector out and ends there', () => {
    const short: Plan = structuredClone(thin)
    for (const part of short.parts) if (part.kind === 'connector') part.maxExtension = 0.2
    const out = dropped(short)
    expect(out.fall.workers[0]!.connectorRanOut).toBe(true)
    expect(out.ends!.why).toContain('run out')
    expect(out.ends!.at).toBeLessThan(out.workers[0]!.moments.find((m) => m.what === 'lowest')!.at)
  })

  it('is refused in words where the line is not there', () => {
    expect(dropWorkers(thin, request(thin, { line: 'none' }))).toEqual({
      ok: false,
      why: 'line none is not in the plan',
    })
  })
})

describe('two who fall in turn', () => {
  it('both stand before they step off, and the second falls after the first has come to rest', () => {
    const { drops } = request(thin)
    const pair = dropped(thin, {
      order: 'in-turn',
      drops: [drops[0]!, { ...drops[0]!, station: drops[0]!.station + 1 }],
    })
    const h = pair.fall.history!
    for (let f = 1; f < h.frames; f++) expect(h.times[f]!).toBeGreaterThan(h.times[f - 1]!)
    const [first, second] = pair.workers.map((w) => w.moments)
    const taut = first!.find((m) => m.what === 'taut')!.at
    const off = second!.find((m) => m.what === 'steps off')!.at
    // A body on a rope needs a second and more to come to rest.
    expect(off).toBeGreaterThan(taut + 1)
    // No body is moved by more in one picture than its speed allows.
    for (let f = 1; f < h.frames; f++)
      for (let w = 0; w < 2; w++)
        expect(Math.abs(h.workerZ[f * 2 + w]! - h.workerZ[(f - 1) * 2 + w]!)).toBeLessThan(0.12)
  })
})
