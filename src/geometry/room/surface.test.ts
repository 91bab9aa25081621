/** Where one can stand: reach on pieces of walking surface, and which pieces one can step onto. */
import { describe, expect, it } from 'vitest'
import { expectClose } from '../../../tests/support/close'
import type { Deck, Girder, Plan, Vec2 } from '../../plan/types'
import { girderFrame } from '../girder'
import { doubleArea } from '../polygon'
import { deckPieces, standingReach, topElevation, topOutline, walkingSurface } from './surface'

const rectangle = (x0: number, y0: number, x1: number, y1: number): Vec2[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
]
const pieces = (...outlines: Vec2[][]) => outlines.map((outline) => ({ outline }))

describe('how far one can stand', () => {
  const square = rectangle(0, -1, 4, 1)

  it.each([
    [[1, 0], [1, 0], 3],
    [[1, 0], [-1, 0], 1],
    [[1, 0], [0, 1], 1],
    [[1, 0.25], [0, -1], 1.25],
    [[1, 0], [0.6, 0.8], 1.25],
    [[3.5, 0], [0.8, 0.6], 0.625],
    [[1, 0], [-0.8, -0.6], 1.25],
  ] as [Vec2, Vec2, number][])('from %j towards %j it is %f m to the edge', (from, way, reach) => {
    expectClose(standingReach(pieces(square), from, way), reach, { abs: 1e-12 })
  })

  it('goes on over a gap of a step, in whatever order the pieces come, and ends at a wider one', () => {
    const next = rectangle(4.29, -1, 6, 1)
    const far = rectangle(6.31, -1, 9, 1)
    expectClose(standingReach(pieces(far, next, square), [1, 0], [1, 0]), 5, { abs: 1e-12 })
    expectClose(standingReach(pieces(rectangle(4.31, -1, 6, 1), square), [1, 0], [1, 0]), 3, { abs: 1e-12 })
    const joined = pieces(square, next, rectangle(6.29, -1, 9, 1))
    expectClose(standingReach(joined, [1, 0], [1, 0]), 8, { abs: 1e-12 })
  })

  it('is that of the longer of two pieces that lie on each other, wherever they begin', () => {
    const both = pieces(rectangle(0.5, -1, 1.5, 1), square, rectangle(2, -1, 3, 1))
    expectClose(standingReach(both, [1, 0], [1, 0]), 3, { abs: 1e-12 })
  })

  it('is 0 off the surface, and takes nothing that lies behind or beside', () => {
    expect(standingReach(pieces(square), [-0.4, 0], [1, 0])).toBe(0)
    expect(standingReach(pieces(square), [5, 0], [1, 0])).toBe(0)
    expect(standingReach(pieces(square), [1, 1.2], [1, 0])).toBe(0)
    expect(standingReach(pieces(square), [1, 1.2], [-1, 0])).toBe(0)
    expect(standingReach(pieces(square, rectangle(-9, -1, -4, 1)), [1, 0], [1, 0])).toBe(3)
    expect(standingReach([], [1, 0], [1, 0])).toBe(0)
    // Past the corner: the edge's line is met, the edge is not.
    expect(standingReach(pieces(square), [4.1, 0.95], [-0.6, 0.8])).toBe(0)
    expect(standingReach(pieces(square), [1, 1], [1, 0]), 'along its very edge').toBe(3)
  })
})

const girder = (id: string, y: number, z = 10): Girder =>
  ({ id, start: [0, y, z], end: [20, y, z], section: { topWidth: 1 }, loops: [] }) as unknown as Girder
const deck = (id: string, outline: Vec2[], elevation: number): Deck => ({ id, name: id, outline, elevation })
const plan = (girders: Girder[], decks: Deck[] = []): Plan => ({ girders, decks }) as unknown as Plan

describe('the surface that one can walk to', () => {
  const own = girder('G1', 0)
  const count = (...args: Parameters<typeof plan>): number => walkingSurface(plan(...args), own).length

  it('is the own top first, half its width to either side', () => {
    expect(walkingSurface(plan([girder('G0', 9), own]), own)).toEqual(pieces(rectangle(0, -0.5, 20, 0.5)))
    expect(topOutline(own, 3)).toEqual(rectangle(0, -1.5, 20, 1.5))
  })

  it.each([
    [0.29, 0, 2],
    [0.31, 0, 1],
    [0, 0.49, 2],
    [0, -0.49, 2],
    [0, 0.51, 1],
    [0, -0.51, 1],
    [0.29, 0.49, 2],
  ])('takes what lies %f m beside and %f m up: %i pieces', (beside, up, wanted) => {
    const withDeck = 2 * wanted - 1 // A rectangle is two triangles.
    for (const side of [1, -1]) {
      const y = side * (0.5 + beside)
      const outline = side > 0 ? rectangle(4, y, 6, y + 2) : rectangle(4, y - 2, 6, y)
      expect(count([own], [deck('D', outline, 10 + up)]), `side ${side}`).toBe(withDeck)
      expect(count([own, girder('G2', side * (1 + beside), 10 + up)]), `girder, side ${side}`).toBe(wanted)
    }
    const ahead = rectangle(20 + beside, -0.5, 24, 0.5)
    expect(count([own], [deck('D', ahead, 10 + up)])).toBe(withDeck)
    expect(count([own], [deck('D', rectangle(-4, -0.5, -beside, 0.5), 10 + up)])).toBe(withDeck)
  })

  it('measures a step across slantwise past corners, and finds where long pieces cross', () => {
    expect(count([own], [deck('D', rectangle(20.2, 0.7, 24, 3), 10)])).toBe(3)
    expect(count([own], [deck('D', rectangle(20.25, 0.75, 24, 3), 10)])).toBe(1)
    expect(count([own], [deck('D', rectangle(8, -1.5, 9, 30), 10)])).toBe(3)
    expect(count([own], [deck('D', rectangle(8, -30, 9, 1.5), 10)])).toBe(3)
    expect(walkingSurface({ girders: [own] } as unknown as Plan, own).length).toBe(1)
  })

  it('goes on from piece to piece, and not past a step that is too high', () => {
    const bridge = deck('D', rectangle(4, 0.5, 6, 2.5), 10.3)
    expect(count([own, girder('G2', 3, 10.7)], [bridge])).toBe(4)
    expect(count([own, girder('G2', 3, 10.9)], [bridge])).toBe(3)
    expect(count([own, girder('G2', 3, 10)])).toBe(1)
  })

  it('takes the height where the two are nearest, and a deck that crosses over the top', () => {
    const slope = { ...girder('G2', 1), start: [0, 1, 14], end: [20, 1, 8] } as Girder
    expect(count([own, slope])).toBe(1)
    const touching = { ...girder('G2', 0), start: [20, 0, 10.2], end: [40, 0, 14] } as Girder
    expect(count([own, touching])).toBe(2)
    expect(count([own], [deck('D', rectangle(8, -5, 9, 5), 10.2)])).toBe(3)
  })
})

it('cuts a deck of any outline into convex pieces of the same area, counter-clockwise', () => {
  const outline: Vec2[] = [
    [0, 0],
    [4, 0],
    [4, 1],
    [1, 1],
    [1, 3],
    [0, 3],
  ]
  for (const corners of [outline, [...outline].reverse()]) {
    const areas = deckPieces(deck('D', corners, 5)).map((p) => doubleArea(p) / 2)
    for (const area of areas) expect(area).toBeGreaterThan(0)
    expectClose(
      areas.reduce((a, b) => a + b, 0),
      6,
      { abs: 1e-12 },
    )
  }
})

it('has the elevation of a sloping top at a place in plan, beside it and past its ends', () => {
  const frame = girderFrame({ ...girder('G', 2), start: [1, 2, 10], end: [7, 10, 11] } as Girder)
  // 10 m in plan along (0.6, 0.8), 1 m up.
  for (const [s, across] of [
    [0, 0],
    [10, 0],
    [5, 3],
    [-4, -1],
    [16, 2],
  ] as const) {
    const p: Vec2 = [1 + 0.6 * s - 0.8 * across, 2 + 0.8 * s + 0.6 * across]
    expectClose(topElevation(frame, p), 10 + s / 10, { abs: 1e-12 }, `at ${s}`)
  }
})
