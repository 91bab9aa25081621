import { expect, it } from 'vitest'
import type { Girder, Line, Part, Stanchion } from '../plan/types'
import { headHeight, lineGeometry, midStation, placeOf } from './line'

const stanchion = (station: number, offset: number): Stanchion =>
  ({ id: `S${station}`, station, offset, part: 'P' }) as Stanchion

const line = (...at: [number, number][]): Line =>
  ({ stanchions: at.map(([s, o]) => stanchion(s, o)) }) as Line

const level = { start: [0, 0, 10], end: [40, 0, 10] } as unknown as Girder
/** Rises 3 for every 4 in plan. */
const steep = { start: [0, 0, 0], end: [16, 0, 12] } as unknown as Girder

it('takes the height of the rope from the stanchion’s part, and none from another kind or where it is missing', () => {
  const part = (kind: string): { parts: Part[] } => ({
    parts: [{ id: 'P', kind, height: 1.1 } as unknown as Part],
  })
  expect(headHeight(part('stanchion'), stanchion(0, 0))).toBe(1.1)
  expect(headHeight(part('bracket'), stanchion(0, 0))).toBeNull()
  expect(headHeight({ parts: [] }, stanchion(0, 0))).toBeNull()
  const other = { id: 'Q', kind: 'stanchion', height: 2 } as unknown as Part
  expect(headHeight({ parts: [other, ...part('stanchion').parts] }, stanchion(0, 0))).toBe(1.1)
})

it('stands heads plumb over their feet and sums level distances around a bend: 3, then 5 by a 3-4-5 triangle', () => {
  const g = lineGeometry(level, line([2, 0], [5, 0], [9, 3]), [1, 1.2, 1.2])
  expect(g.feet).toEqual([
    [2, 0, 10],
    [5, 0, 10],
    [9, 3, 10],
  ])
  expect(g.heads.map((h) => h[2])).toEqual([11, 11.2, 11.2])
  expect(g.x).toEqual([0, 3, 8])
  expect(g.slopes[0]).toBeCloseTo((Math.atan(0.2 / 3) * 180) / Math.PI, 10)
  expect(g.slopes[1]).toBe(0)
})

it('tells slopes without a sign, against the level and not along the girder', () => {
  const up = lineGeometry(steep, line([5, 0], [10, 0]), [1, 1])
  expect(up.x[1]).toBeCloseTo(4, 12)
  expect(up.slopes[0]).toBeCloseTo(36.8698976458, 8)
  const down = lineGeometry(steep, line([5, 0], [10, 0]), [4, 1])
  expect(down.slopes[0]).toBeCloseTo(0, 10)
  const steeper = lineGeometry(level, line([5, 0], [10, 0]), [4, 1])
  expect(steeper.slopes[0]).toBeCloseTo(30.9637565321, 8)
})

it('finds the span, the share and the top under a station; beyond the ends it stays at the ends', () => {
  const g = lineGeometry(level, line([2, 0], [6, 0.4], [16, 0.4]), [1, 1, 1])
  expect(placeOf(g, 3)).toMatchObject({ span: 0, share: 0.25, offset: 0.1, top: [3, 0.1, 10] })
  expect(placeOf(g, 3).at).toBeCloseTo(Math.hypot(4, 0.4) / 4, 12)
  expect(placeOf(g, 6)).toMatchObject({ span: 0, share: 1 })
  expect(placeOf(g, 8.5)).toMatchObject({ span: 1, share: 0.25, at: 2.5, offset: 0.4, top: [8.5, 0.4, 10] })
  expect(placeOf(g, 0)).toMatchObject({ span: 0, share: 0, at: 0, top: [2, 0, 10] })
  expect(placeOf(g, 99)).toMatchObject({ span: 1, share: 1, at: 10, top: [16, 0.4, 10] })
  expect(midStation(g, 0)).toBe(4)
  expect(midStation(g, 1)).toBe(11)
})
