import { describe, expect, it } from 'vitest'
import { frameAt, timeAt, valueAt } from './timeline'

/** Uneven, as where a free fall was put in. */
const times = Float64Array.from([-0.4, -0.392, -0.01, 0, 0.008, 0.5])

describe('frames and times', () => {
  it('are each other’s inverse between the first and the last', () => {
    for (let i = 0; i <= 50; i++) {
      const t = -0.4 + (0.9 * i) / 50
      expect(timeAt(times, frameAt(times, t))).toBeCloseTo(t, 12)
    }
  })

  it('stay within the history', () => {
    expect(frameAt(times, -9)).toBe(0)
    expect(frameAt(times, 9)).toBe(5)
    expect(timeAt(times, 99)).toBe(0.5)
    expect(timeAt(times, -1)).toBe(-0.4)
  })

  it('read a row of figures between two pictures', () => {
    expect(valueAt(Float64Array.from([10, 20, 40]), 1.25)).toBe(25)
  })
})
