/** What lies between the stations that the statics give: values by hand. */
import { describe, expect, it } from 'vitest'
import { expectClose } from '../../../tests/support/close'
import { monotoneCubic } from './interpolate'
import { excessAt, offsetAt, stretchesOf, whyUnknown } from './profile'
import type { RoomInput, RoomSample } from './types'

const given = (drop: number): RoomSample => ({ drop, extension: 0.5 + drop, height: 1 - drop / 10 })
const missing = { unknown: 'the law did not converge' }

function input(change: Partial<RoomInput> = {}): RoomInput {
  const at = (station: number, drop: number) => ({ station, samples: [given(drop), given(2 * drop)] })
  return {
    line: 'L1',
    corners: [
      { worker: 'W', line: 'soft', connector: 'low' },
      { worker: 'W', line: 'stiff', connector: 'low' },
    ],
    stanchions: [
      { station: 1, offset: 0.2 },
      { station: 5, offset: -0.2 },
      { station: 7, offset: 0.6 },
    ],
    stations: [at(1, 0), at(2, 0.3), at(4, 0.3), at(5, 0), at(6, 0.1), at(7, 0)],
    excess: [
      { from: 1, to: 5, excess: 0.1 },
      { from: 5, to: 7, excess: 0.4 },
    ],
    ...change,
  } as RoomInput
}

describe('the cubic between stations', () => {
  const made = () => {
    const f = monotoneCubic([2, 3, 5], [0, 1, 2])
    return (x: number): number => f(2 + x)
  }

  it('has the slope at a knot of Fritsch & Butland 1984: weighted harmonic mean, here 9/13', () => {
    const f = made()
    expectClose(f(0.5), 0.5 + (1 - 9 / 13) / 8, { abs: 1e-12 })
    expectClose(f(2), 1.5 + (2 * (9 / 13 - 0.5)) / 8, { abs: 1e-12 })
    expectClose(f(1.5), 1.15625 + 2 * (0.140625 * (9 / 13) - 0.046875 * 0.5), { abs: 1e-12 })
    expectClose((f(1 + 1e-6) - f(1 - 1e-6)) / 2e-6, 9 / 13, { abs: 1e-5 })
  })

  it('runs through its knots, keeps to them outside, and is straight where they are', () => {
    const f = made()
    expect([f(-5), f(0), f(1), f(3), f(9)]).toEqual([0, 0, 1, 2, 2])
    const line = monotoneCubic([0, 1, 2.5, 7], [1, 3, 6, 15])
    for (const x of [0.3, 1.2, 2.6, 5, 6.9]) expectClose(line(x), 1 + 2 * x, { abs: 1e-12 })
    expect(monotoneCubic([4], [2.5])(0)).toBe(2.5)
  })

  it('goes no farther than its knots where they turn back or stay', () => {
    const g = monotoneCubic([0, 1, 2, 3, 4], [0, 1, 1, 0.2, 3])
    for (let x = 0; x <= 4; x += 0.01) {
      const i = Math.min(3, Math.floor(x))
      const ends = [0, 1, 1, 0.2, 3].slice(i, i + 2)
      expect(g(x)).toBeGreaterThanOrEqual(Math.min(...ends) - 1e-12)
      expect(g(x)).toBeLessThanOrEqual(Math.max(...ends) + 1e-12)
    }
  })
})

describe('the stretches of a corner', () => {
  it('end at stanchions, each with its own values', () => {
    const both = stretchesOf(input(), 1)
    expect(both.map((s) => [s.from, s.to])).toEqual([
      [1, 5],
      [5, 7],
    ])
    expect(both[0]!.at(2)).toEqual(given(0.6))
    expectClose(both[0]!.at(3).drop, 0.6, { abs: 1e-12 })
    expectClose(both[1]!.at(6).drop, 0.2, { abs: 1e-12 })
    expectClose(stretchesOf(input(), 0)[1]!.at(6).height, 0.99, { abs: 1e-12 })
  })

  it('end where a value is missing or is no number, and say why', () => {
    const stations = input().stations
    stations[2] = { station: 4, samples: [missing, given(0.6)] }
    const gone = input({ stations })
    expect(stretchesOf(gone, 0).map((s) => [s.from, s.to])).toEqual([
      [1, 2],
      [5, 7],
    ])
    expect(stretchesOf(gone, 1).length).toBe(2)
    expect(whyUnknown(gone)).toBe('at station 4.00 m of line L1: the law did not converge')
    stations[2] = { station: 4, samples: [given(0.3), { ...given(0.6), extension: Number.NaN }] }
    expect(stretchesOf(input({ stations }), 1).map((s) => s.to)).toEqual([2, 7])
    expect(whyUnknown(input({ stations }))).toBe('at station 4.00 m of line L1: a figure is not finite')
    stations[2] = { station: 4, samples: [given(0.3)] }
    expect(stretchesOf(input({ stations }), 1).map((s) => s.to)).toEqual([2, 7])
    expect(whyUnknown(input({ stations }))).toBe('at station 4.00 m of line L1: a figure is not finite')
    expect(whyUnknown(input())).toBeNull()
    expect(whyUnknown(input({ stations: [] }))).toBe('line L1 has no fall that could be computed')
  })
})

it('is one place where only one station is known, and none beside others', () => {
  const [first] = input().stations
  const alone = stretchesOf(input({ stations: [{ ...first!, station: 3 }] }), 0)
  expect(alone.map((s) => [s.from, s.to, s.at(3).drop])).toEqual([[3, 3, 0]])
  const stations = input().stations.map((s, i) => (i % 2 ? { ...s, samples: [missing, missing] } : s))
  expect(stretchesOf(input({ stations }), 0)).toEqual([])
})

it('adds the excess of the span, of two that meet the greater, none outside', () => {
  expect([0.9, 1, 3, 5, 6, 7, 7.1].map((s) => excessAt(input(), s))).toEqual([0, 0.1, 0.1, 0.4, 0.4, 0.4, 0])
})

it('has the offset of the line between its stanchions, and of its ends beyond them', () => {
  for (const [station, offset] of [
    [0, 0.2],
    [1, 0.2],
    [2, 0.1],
    [5, -0.2],
    [6, 0.2],
    [6.5, 0.4],
    [7, 0.6],
    [9, 0.6],
  ] as const) {
    expectClose(offsetAt(input(), station), offset, { abs: 1e-12 }, `at ${station}`)
  }
  const alone = input({ stanchions: [{ station: 3, offset: 0.3 }] })
  expect([offsetAt(alone, 3), offsetAt(alone, 8)]).toEqual([0.3, 0.3])
})
