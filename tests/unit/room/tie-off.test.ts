import { describe, expect, it } from 'vitest'
import { type TieOffLine, tieOffMap, tieOffReach } from '../../../src/geometry/room/tie-off'

const line: TieOffLine = {
  line: 'L1',
  heads: [
    [2, 0, 1],
    [10, 0, 1],
  ],
  height: 1,
  workers: [{ id: 'W', type: 'lanyard', length: 1.8, harnessStretch: 0.3, dRingHeight: 1.5 }],
}
const surface = [
  {
    outline: [
      [0, -3],
      [14, -3],
      [14, 3],
      [0, 3],
    ] as [number, number][],
  },
]

describe('where one can tie off', () => {
  it('reaches as far in plan as the connector between rope and D-ring lets (Pythagoras)', () => {
    expect(tieOffReach(line)).toBeCloseTo(Math.sqrt(1.8 ** 2 - 0.5 ** 2), 12)
  })

  it('covers the surface once, and marks what is in reach: a strip with round ends', () => {
    const step = 0.1
    const map = tieOffMap([...surface, ...surface], [line], step)
    expect(map).toHaveLength((14 / step) * (6 / step))
    const reach = tieOffReach(line)
    const wrong = map.filter(({ at, lines }) => {
      const along = Math.max(0, 2 - at[0], at[0] - 10)
      return lines.length > 0 !== Math.hypot(along, at[1]) <= reach
    })
    expect(wrong).toEqual([])
    const area = map.filter((c) => c.lines.length > 0).length * step ** 2
    expect(Math.abs(area / (8 * 2 * reach + Math.PI * reach ** 2) - 1)).toBeLessThan(0.02)
  })

  it('knows no cover without a line or without a crew', () => {
    expect(tieOffMap(surface, [], 1).every((c) => c.lines.length === 0)).toBe(true)
    expect(tieOffReach({ ...line, workers: [] })).toBe(0)
  })
})
