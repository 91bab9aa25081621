/** Outlines and paths as text: what people type and paste, and what must not get through. */
import { describe, expect, it } from 'vitest'
import { addGirder } from '../edits/girder-edits'
import { deckBetween, laneUnder } from '../edits/outline-proposals'
import { emptyPlan } from '../empty-plan'
import { areaOf, outlineFault, readPoints } from './point-table'

describe('points as a table', () => {
  it('reads feet and inches as people type them, with a head passed over', () => {
    const { points, faults } = readPoints("x; y\n0; 0\n12-6; 0\n12 ft 6 in; 10'", 'us', 2, 2)
    expect(faults).toEqual([])
    expect(points[1]?.[0]).toBeCloseTo(12.5 * 0.3048, 9)
    expect(points[2]?.[0]).toBeCloseTo(12.5 * 0.3048, 9)
    expect(points[2]?.[1]).toBeCloseTo(3.048, 9)
  })
  it('takes a path with or without elevations', () =>
    expect(readPoints('0;0;-8\n10;0', 'si', 2, 3).points).toEqual([
      [0, 0, -8],
      [10, 0],
    ]))
  it.each(['hello', '1', '1;2;3', 'a;b\nc;d\ne;f', '\u0000;\u0001', '1e999;0', 'NaN;0', '"'])(
    'says why %j is no outline',
    (text) => {
      const { points, faults } = readPoints(text, 'us', 2, 2)
      expect(faults.length + (outlineFault(points as [number, number][]) ? 1 : 0)).toBeGreaterThan(0)
      expect(points.flat().every(Number.isFinite)).toBe(true)
    },
  )
})

describe('an outline', () => {
  const square: [number, number][] = [
    [0, 0],
    [4, 0],
    [4, 3],
    [0, 3],
  ]
  it('of four corners has its area', () => {
    expect(outlineFault(square)).toBeNull()
    expect(areaOf(square)).toBe(12)
  })
  it('whose sides cross is refused with the sides', () => {
    const [a, b, c, d] = square as [[number, number], [number, number], [number, number], [number, number]]
    expect(outlineFault([a, c, b, d])).toMatch(/Side 1 runs across side 3/)
  })
  it('without area, or of two corners, is refused', () => {
    expect(outlineFault(square.slice(0, 2))).toMatch(/three corners/)
    expect(
      outlineFault([
        [0, 0],
        [1, 0],
        [2, 0],
      ]),
    ).toMatch(/area|across/)
  })
})

describe('what a typed deck and lane begin with', () => {
  const plan = emptyPlan('si')
  it('is nothing where there are no girders', () =>
    expect([deckBetween(plan), laneUnder(plan)]).toEqual([[], []]))
  it('spans from the first girder to the last, and crosses below the middle', () => {
    const bay = emptyPlan('si')
    addGirder(bay, [0, 0, 14], [30, 0, 14])
    addGirder(bay, [0, 6, 14], [30, 6, 14])
    expect(areaOf(deckBetween(bay))).toBe(180)
    expect(laneUnder(bay)).toEqual([
      [15, -17, 6],
      [15, 23, 6],
    ])
  })
})
