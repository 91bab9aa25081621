/** What a caller gets: history, progress, cancel, refusal; and that figures do not depend on the way of asking. */
import { describe, expect, it } from 'vitest'
import { fallByParts, fallInTime } from '../../../src/solver/time/fall'
import { expectClose, solvedValue } from '../../support/close'
import { FIRM_ABSORBER, fall, fallInput, lineModel, worker } from './support'

const input = fallInput(lineModel([8, 9], { absorber: FIRM_ABSORBER }), [worker(0, 4), worker(1, 12)])

describe('history', () => {
  const plain = fall(input)
  const got = fall(input, { history: true })
  const h = got.history!

  it('holds three seconds past the lowest point, all arrays of one size', () => {
    const lowest = Math.max(...got.workers.map((w) => w.lowestAt))
    expect(h.times[h.frames - 1]).toBeGreaterThan(lowest + 2.98)
    expect(h.times.length).toBe(h.frames)
    expect(h.x.length).toBe(h.frames * h.nodes)
    expect(h.z.length).toBe(h.frames * h.nodes)
    expect(h.tension.length).toBe(h.frames * (h.nodes - 1))
    expect(h.workerZ.length).toBe(h.frames * 2)
    expect(h.connectorForce.length).toBe(h.frames * 2)
    expect(h.headShift.length).toBe(h.frames * 2)
    expect(h.energies.length).toBe(h.frames * 4)
    for (let f = 1; f < h.frames; f++) expect(h.times[f]! - h.times[f - 1]!).toBeCloseTo(0.008, 4)
  })

  it('leaves the figures as they are without it', () => {
    expect(got.tension).toBe(plain.tension)
    expect(got.workers).toEqual(plain.workers)
    expect(got.heads).toEqual(plain.heads)
    expect(plain.history).toBeNull()
  })

  it('shows what the figures say', () => {
    let low = Number.POSITIVE_INFINITY
    let force = 0
    for (let f = 0; f < h.frames && h.times[f]! < got.closedAt; f++) {
      low = Math.min(low, h.workerZ[2 * f]!)
      force = Math.max(force, h.connectorForce[2 * f]!)
    }
    // Pictures stand 8 ms apart; at the lowest point a body moves by less than 1 mm in that.
    expectClose(low, got.workers[0]!.lowest, { abs: 0.002 }, 'lowest point')
    expectClose(force, got.workers[0]!.arrestForce, { rel: 0.02 }, 'force')
    expect(got.whole.workers[0]!.connectorTorn).toBeGreaterThanOrEqual(got.workers[0]!.connectorTorn)
  })

  it('keeps energy by kind that adds up at every picture', () => {
    const at = (f: number): number => h.energies.subarray(4 * f, 4 * f + 4).reduce((a, b) => a + b, 0)
    const fallEnergy = h.energies[0]!
    for (let f = 1; f < h.frames; f++) expectClose(at(f), at(0), { abs: 0.005 * fallEnergy }, `picture ${f}`)
  })

  it('can be handed over without a copy', () => {
    const buffers = Object.values(fall(input, { history: true, after: 0.1 }).history!).flatMap((v) =>
      ArrayBuffer.isView(v) ? [v.buffer as ArrayBuffer] : [],
    )
    expect(new Set(buffers).size).toBe(12)
    expect(() => structuredClone(buffers, { transfer: buffers })).not.toThrow()
  })
})

describe('progress and cancel', () => {
  it('tells rising progress', () => {
    const seen: number[] = []
    fall(input, { history: true, progress: (p) => seen.push(p) })
    expect(seen.length).toBeGreaterThan(20)
    for (const p of seen) expect(p >= 0 && p < 1).toBe(true)
    expect(seen[seen.length - 1]).toBeGreaterThan(0.9)
  })

  it('stops when told to', () => {
    let asked = 0
    const got = fallInTime(input, { history: true, cancelled: () => ++asked >= 3 })
    expect(got).toEqual({ ok: false, why: 'cancelled' })
    expect(asked).toBe(3)
  })

  it('gives the same in parts', () => {
    const parts = fallByParts(input)
    let next = parts.next()
    let count = 0
    while (!next.done) {
      count++
      next = parts.next()
    }
    expect(count).toBeGreaterThan(5)
    expect(solvedValue(next.value).tension).toBe(fall(input).tension)
  })

  it('gives the same twice, to the bit', () => {
    expect(fall(input)).toEqual(fall(input))
  })
})

describe('refuses what is no fall', () => {
  const why = (change: object): string => {
    const got = fallInTime({ ...input, ...change })
    return got.ok ? '' : got.why
  }

  it.each([
    ['nobody', { workers: [] }, /nobody/],
    ['a body without mass', { workers: [worker(0, 4, { mass: 0 })] }, /mass/],
    ['a body with no number for mass', { workers: [worker(0, 4, { mass: Number.NaN })] }, /mass/],
    ['a connector without length', { workers: [worker(0, 4, { length: 0 })] }, /length/],
    ['a station outside its span', { workers: [worker(0, 9)] }, /does not lie/],
    ['a span that is not there', { workers: [worker(5, 4)] }, /not there/],
    ['a missing height', { workers: [worker(0, 4, { surface: Number.NaN })] }, /height/],
    ['a negative delay', { workers: [worker(0, 4, { delay: -1 })] }, /delay/],
    ['a line without a shape', { line: { ...input.line, spans: [] } }, /spans/],
  ])('%s', (_, change, said) => expect(why(change)).toMatch(said))
})
