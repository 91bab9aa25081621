import { describe, expect, it } from 'vitest'
import { clampMark, eyeOffset, ropeCutLength, strapLengths, type TakeUpFigures, takeUp } from './lengths'
import { temperatureTable } from './temperature-table'

const figures: TakeUpFigures = {
  tension: 4450,
  freeLength: 18.2,
  axialStiffness: 3.25e6,
  constructionalStretch: 0.003,
  spans: [
    { length: 9.1, sag: 0.01 },
    { length: 9.1, sag: 0.02 },
  ],
  endStiffness: [200e3, 250e3],
}

describe('takeUp', () => {
  it('adds the four parts of mechanics section 9 (worked by hand)', () => {
    const t = takeUp(figures)!
    expect(t.elastic).toBeCloseTo(0.02492, 6)
    expect(t.constructional).toBeCloseTo(0.0546, 9)
    expect(t.sag).toBeCloseTo((8 * (0.01 ** 2 + 0.02 ** 2)) / (3 * 9.1), 12)
    expect(t.heads).toBeCloseTo(0.02225 + 0.0178, 9)
    expect(t.total).toBeCloseTo(t.elastic + t.constructional + t.sag + t.heads, 12)
  })

  it('gives no number from figures that make none', () => {
    expect(takeUp({ ...figures, axialStiffness: 0 })).toBeNull()
    expect(takeUp({ ...figures, endStiffness: [0, 1] })).toBeNull()
    expect(takeUp({ ...figures, tension: Number.NaN })).toBeNull()
    expect(takeUp({ ...figures, spans: [{ length: 0, sag: 0 }] })).toBeNull()
  })
})

describe('marks and straps', () => {
  it('the eye lies absorber, hardware and take-up short of its stanchion', () => {
    expect(eyeOffset(0.46, 0.78, 0.12)).toBeCloseTo(1.36, 12)
  })

  it('a new rope is marked short by what it still stretches', () => {
    expect(clampMark(16.935, 0.0546)).toBeCloseTo(16.8804, 9)
    expect(clampMark(0.01, 0.02)).toBeNull()
    expect(ropeCutLength(16.88, 0.5)).toBeCloseTo(17.38, 9)
  })

  it('the marked rope, stretched and with its parts, spans from head to head (closing the chain)', () => {
    const t = takeUp(figures)!
    const parts = 0.46 + 0.78
    const mark = clampMark(figures.freeLength - parts, t.constructional)!
    const stretched = mark + t.constructional + t.elastic + parts
    // S (1 + T/EA) is the arc between the heads
    expect(stretched).toBeCloseTo(figures.freeLength * (1 + 4450 / 3.25e6), 12)
  })

  it('strap: two legs and a turn', () => {
    const s = strapLengths({ legs: [1.5, 1.72], partLength: 6.1, wrapLength: 0.4 })
    expect(s.needed).toBeCloseTo(3.62, 12)
    expect(s.left).toBeCloseTo(2.48, 12)
    expect(s.turns).toBeCloseTo(7.2, 12)
    expect(strapLengths({ legs: [4, 4], partLength: 6.1, wrapLength: 0.4 }).turns).toBe(0)
    expect(strapLengths({ legs: [1, 1], partLength: 6.1, wrapLength: 0 }).turns).toBeNull()
  })
})

describe('temperatureTable', () => {
  it('has both ends, the install temperature and even steps, coldest first', () => {
    const rows = temperatureTable({ low: -15, high: 40 }, 15, (t) => 4450 - 30 * (t - 15))
    expect(rows.map((r) => r.temperature)).toEqual([-15, -10, 0, 10, 15, 20, 30, 40])
    expect(rows[4]).toEqual({ temperature: 15, tension: 4450 })
    expect(rows[0]?.tension).toBe(5350)
  })

  it('tells what could not be solved, and stays finite on a step that is none', () => {
    const rows = temperatureTable({ low: 0, high: 10 }, 5, (t) => (t > 5 ? Number.NaN : null), 0)
    expect(rows).toEqual([{ temperature: 5, tension: null }])
  })
})
