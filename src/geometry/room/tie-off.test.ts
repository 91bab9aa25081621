/** Squares of walking surface and the lines in reach of them, by hand. */
import { describe, expect, it } from 'vitest'
import { expectClose } from '../../../tests/support/close'
import { type TieOffLine, tieOffMap, tieOffReach } from './tie-off'
import type { RoomWorker } from './types'

const worker = (change: Partial<RoomWorker> = {}): RoomWorker => ({
  id: 'W',
  type: 'lanyard',
  length: 1.5,
  harnessStretch: 0.3,
  dRingHeight: 1.4,
  ...change,
})
const line = (change: Partial<TieOffLine> = {}): TieOffLine => ({
  line: 'L1',
  heads: [
    [0, 2, 9],
    [4, 2, 9],
    [4, 6, 9],
  ],
  height: 0.5,
  workers: [worker()],
  ...change,
})

describe('how far from a line a worker can be hooked to it', () => {
  it('is the side of a 3-4-5 triangle, of a crew the farthest', () => {
    expectClose(tieOffReach(line()), 1.2, { abs: 1e-12 })
    expectClose(tieOffReach(line({ workers: [worker({ length: 1 }), worker()] })), 1.2, { abs: 1e-12 })
    expect(tieOffReach(line({ workers: [] }))).toBe(0)
  })

  it('of a retractable is that of its lock-off distance, none where that is too short', () => {
    expectClose(tieOffReach(line({ workers: [worker({ type: 'retractable' })] })), 1.2, { abs: 1e-12 })
    expect(tieOffReach(line({ workers: [worker({ type: 'retractable', length: 0.6 })] }))).toBe(0)
    expect(tieOffReach(line({ workers: [worker({ length: 0.6 })] })), 'who stoops').toBe(0.6)
  })
})

it('covers the surface in squares about their middles, each with the lines in reach', () => {
  const outline = (x0: number, y0: number, x1: number, y1: number) => ({
    outline: [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ] as [number, number][],
  })
  const cells = tieOffMap(
    [outline(-1, 0, 1, 1), outline(0, 0, 1, 2)],
    [line(), line({ line: 'L2', heads: [] })],
    0.5,
  )
  const at = cells.map((c) => c.at.join()).sort()
  const wanted = [
    ...[-0.75, -0.25, 0.25, 0.75].flatMap((x) => [0.25, 0.75].map((y) => [x, y])),
    ...[0.25, 0.75].flatMap((x) => [1.25, 1.75].map((y) => [x, y])),
  ]
  expect(at).toEqual(wanted.map((p) => p.join()).sort())
  for (const { at: p, half, lines } of cells) {
    expect(half).toBe(0.25)
    // The nearest of the rope is (0, 2) for who stands beyond its end, else straight ahead.
    const away = Math.hypot(Math.min(0, p[0]), 2 - p[1])
    expect(lines, p.join()).toEqual(away <= 1.2 ? ['L1'] : [])
  }
})
