import { expect, it } from 'vitest'
import { seeded } from '../../tests/support/random'
import type { Girder, LoopRow } from '../plan/types'
import { girderFrame } from './girder'
import { engagedLoops, findLoop, loopNumber, loopPoint, loopStation, loopsOf, rowUnder } from './loops'

const row = (id: string, offset: number, first = 0.5, spacing = 0.25, count = 9): LoopRow => ({
  id,
  first,
  spacing,
  count,
  offset,
  height: 0.1,
  barDiameter: 0.019,
  yieldStress: 276e6,
})

const girder = (...loops: LoopRow[]): Girder =>
  ({ start: [0, 0, 5], end: [10, 0, 5], loops }) as unknown as Girder

it('counts loops from the first one on, for people from 1', () => {
  const r = row('A', 0)
  expect(loopStation(r, 0)).toBe(0.5)
  expect(loopStation(r, 4)).toBe(1.5)
  expect(loopNumber(4)).toBe(5)
  expect(loopsOf(r).map((l) => l.station)).toEqual([0.5, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5])
})

it('finds the loop of a reference, and none beyond either end of its row or in no row', () => {
  const g = girder(row('A', 0), row('B', 0.3))
  expect(findLoop(g, { row: 'B', index: 8 })).toMatchObject({ index: 8, station: 2.5, row: { id: 'B' } })
  expect(findLoop(g, { row: 'A', index: 0 })?.station).toBe(0.5)
  for (const ref of [
    { row: 'A', index: -1 },
    { row: 'A', index: 9 },
    { row: 'C', index: 0 },
  ])
    expect(findLoop(g, ref)).toBeNull()
  expect(loopPoint(girderFrame(g), findLoop(g, { row: 'B', index: 2 })!)).toEqual([1, 0.3, 5])
})

it('takes the nearest row, no farther than 50 mm (mechanics section 7)', () => {
  const g = girder(row('A', -0.04), row('B', 0.03), row('C', 0.2))
  expect(rowUnder(g, 0)?.id).toBe('B')
  expect(rowUnder(g, -0.02)?.id).toBe('A')
  expect(rowUnder(g, 0.25)?.id).toBe('C')
  expect(rowUnder(g, 0.2501)).toBeNull()
  expect(rowUnder(g, 0.1)).toBeNull()
  expect(rowUnder(girder(), 0)).toBeNull()
})

it('has both ends of a tube count, and a loop at the stanchion for neither side', () => {
  const between = engagedLoops(girder(row('A', 0)), 1.375, 0, 0.75)
  expect(between.loops.map((l) => l.station)).toEqual([1, 1.25, 1.5, 1.75])
  expect([between.before, between.after]).toEqual([2, 2])
  const on = engagedLoops(girder(row('A', 0)), 1.5, 0, 0.5)
  expect(on.loops.map((l) => l.station)).toEqual([1.25, 1.5, 1.75])
  expect([on.before, on.after]).toEqual([1, 1])
  const end = engagedLoops(girder(row('A', 0)), 0.5, 0, 0.6)
  expect([end.loops.length, end.before, end.after]).toEqual([2, 0, 1])
  const past = engagedLoops(girder(row('A', 0)), 2.6, 0, 0.6)
  expect([past.loops.length, past.before, past.after]).toEqual([1, 1, 0])
  expect(engagedLoops(girder(row('A', 0)), 1.5, 0.2, 0.5)).toEqual({
    row: null,
    loops: [],
    before: 0,
    after: 0,
  })
  expect(engagedLoops(girder(row('A', 0)), 9, 0, 0.5).loops).toEqual([])
})

it('engages the loops that one finds by looking at each: 200 brackets, seed 71', () => {
  const random = seeded(71)
  for (let i = 0; i < 200; i++) {
    const r = row('A', 0, random.between(0, 1), random.between(0.1, 0.4), random.whole(1, 30))
    const [station, tube] = [random.between(0, 8), random.between(0.2, 1.5)]
    const got = engagedLoops(girder(r), station, 0.05, tube)
    const near = loopsOf(r).filter((l) => Math.abs(l.station - station) <= tube / 2)
    expect(got.loops).toEqual(near)
    expect(got.before).toBe(near.filter((l) => l.station < station).length)
    expect(got.after).toBe(near.filter((l) => l.station > station).length)
  }
})
