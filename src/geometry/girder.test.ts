import { expect, it } from 'vitest'
import type { Girder, Vec3 } from '../plan/types'
import { girderFrame, stationOf, topPoint } from './girder'

/** Nothing but its ends counts here. */
const girder = (start: Vec3, end: Vec3): Girder => ({ start, end }) as Girder

it('runs from start to end, left as one who walks that way has it', () => {
  const east = girderFrame(girder([1, 2, 3], [11, 2, 3]))
  expect(east).toMatchObject({ origin: [1, 2, 3], along: [1, 0, 0], length: 10, planRate: 1, rise: 0 })
  expect(topPoint(east, 4, 0.5)).toEqual([5, 2.5, 3])
  const north = girderFrame(girder([0, 0, 0], [0, 20, 0]))
  expect(topPoint(north, 5, 0.5)).toEqual([-0.5, 5, 0])
  const west = girderFrame(girder([0, 0, 0], [-20, 0, 0]))
  expect(topPoint(west, 5, 0.5)[1]).toBe(-0.5)
})

it('measures stations along a top that falls or climbs, and offsets level: a 3-4-5 slope', () => {
  const frame = girderFrame(girder([0, 0, 10], [8, 0, 4]))
  expect(frame.length).toBe(10)
  expect(frame.planRate).toBeCloseTo(0.8, 12)
  expect(frame.rise).toBeCloseTo(-0.6, 12)
  const [x, y, z] = topPoint(frame, 5, -2)
  expect([x, y, z].map((v) => Math.round(v * 1e9) / 1e9)).toEqual([4, -2, 7])
})

it('finds station and offset of a place in plan again, whatever its height, for skew and sloping girders', () => {
  const frame = girderFrame(girder([3, -1, 18], [23, 12, 15]))
  for (const [station, offset] of [
    [0, 0],
    [7.25, 0.4],
    [20, -1.1],
    [-2, 3],
  ] as const) {
    const at = topPoint(frame, station, offset)
    const found = stationOf(frame, [at[0], at[1], at[2] + 9])
    expect(found.station).toBeCloseTo(station, 10)
    expect(found.offset).toBeCloseTo(offset, 10)
  }
})
