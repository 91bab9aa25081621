import { expect, it } from 'vitest'
import { seeded } from '../../tests/support/random'
import type { Vec2 } from '../plan/types'
import {
  contains,
  counterClockwise,
  doubleArea,
  nearestInPolygon,
  nearestOnSegment,
  segmentToPolygon,
  subtract,
} from './polygon'

const square: Vec2[] = [
  [0, 0],
  [2, 0],
  [2, 2],
  [0, 2],
]

type Random = ReturnType<typeof seeded>

/** Corners on a circle in order of angle are convex. */
function convex(random: Random): Vec2[] {
  const angles = Array.from({ length: random.whole(3, 7) }, () => random.between(0, 2 * Math.PI)).sort(
    (a, b) => a - b,
  )
  const [x, y, r] = [random.between(-2, 2), random.between(-2, 2), random.between(0.5, 3)]
  return angles.map((a): Vec2 => [x + r * Math.cos(a), y + r * Math.sin(a)])
}

const place = (random: Random): Vec2 => [random.between(-5, 5), random.between(-5, 5)]
const apart = (a: Vec2, b: Vec2): number => Math.hypot(a[0] - b[0], a[1] - b[1])

it('tells area by the way round', () => {
  expect(doubleArea(square)).toBe(8)
  expect(doubleArea([...square].reverse())).toBe(-8)
  expect(counterClockwise([...square].reverse())).toEqual(square)
  expect(counterClockwise(square)).toBe(square)
})

it('holds what is in it or on its edge; fewer than three corners hold nothing', () => {
  expect([contains(square, [1, 1]), contains(square, [2, 1]), contains(square, [0, 0])]).toEqual([
    true,
    true,
    true,
  ])
  expect([contains(square, [2.001, 1]), contains(square, [1, -0.001])]).toEqual([false, false])
  expect(
    contains(
      [
        [0, 0],
        [2, 0],
      ],
      [1, 0],
    ),
  ).toBe(false)
})

it('finds the nearest point of a segment, its ends included, and of a point', () => {
  expect(nearestOnSegment([0, 0], [4, 0], [1, 3])).toEqual([1, 0])
  expect(nearestOnSegment([0, 0], [4, 0], [-1, 3])).toEqual([0, 0])
  expect(nearestOnSegment([0, 0], [4, 0], [9, 3])).toEqual([4, 0])
  expect(nearestOnSegment([1, 1], [1, 1], [9, 3])).toEqual([1, 1])
})

it('cuts a hole out of a square: what is left is the rest, in pieces that do not overlap', () => {
  const hole: Vec2[] = [
    [1, 1],
    [3, 1],
    [3, 3],
    [1, 3],
  ]
  const pieces = subtract(square, hole)
  expect(pieces.reduce((sum, p) => sum + doubleArea(p) / 2, 0)).toBeCloseTo(3, 12)
  expect(subtract(square, square)).toEqual([])
  expect(
    subtract(
      square,
      square.map(([x, y]): Vec2 => [x + 5, y]),
    ),
  ).toHaveLength(1)
})

it('leaves out exactly the places in the hole: 60 pairs with 200 places each, seed 72', () => {
  const random = seeded(72)
  for (let i = 0; i < 60; i++) {
    const [body, hole] = [convex(random), convex(random)]
    const pieces = subtract(body, hole)
    for (let k = 0; k < 200; k++) {
      const p = place(random)
      const edge = [body, hole].some((shape) =>
        shape.some((a, j) => apart(nearestOnSegment(a, shape[(j + 1) % shape.length]!, p), p) < 0.01),
      )
      if (edge) continue
      const left = pieces.filter((piece) => contains(piece, p)).length
      expect(left, `pair ${i}, place ${p}`).toBe(contains(body, p) && !contains(hole, p) ? 1 : 0)
    }
  }
})

it('comes no nearer to a polygon than any of its points: 200 places, seed 73', () => {
  const random = seeded(73)
  for (let i = 0; i < 200; i++) {
    const [shape, p] = [convex(random), place(random)]
    const near = nearestInPolygon(shape, p)
    if (contains(shape, p)) expect(near).toEqual(p)
    else expect(apart(near, p)).toBeCloseTo(sampledDistance(shape, p), 2)
  }
})

const sampledDistance = (shape: Vec2[], p: Vec2): number =>
  Math.min(...rimOf(shape, 400).map((q) => apart(q, p)))

const rimOf = (shape: Vec2[], steps: number): Vec2[] =>
  shape.flatMap((a, j) => {
    const b = shape[(j + 1) % shape.length]!
    return Array.from(
      { length: steps },
      (_, k): Vec2 => [a[0] + ((b[0] - a[0]) * k) / steps, a[1] + ((b[1] - a[1]) * k) / steps],
    )
  })

it('measures a segment from a polygon as dense points along it do, 0 where they meet: 150 pairs, seed 74', () => {
  const random = seeded(74)
  for (let i = 0; i < 150; i++) {
    const [shape, a, b] = [convex(random), place(random), place(random)]
    const got = segmentToPolygon(a, b, shape)
    const along = Array.from(
      { length: 401 },
      (_, k): Vec2 => [a[0] + ((b[0] - a[0]) * k) / 400, a[1] + ((b[1] - a[1]) * k) / 400],
    )
    const least = Math.min(...along.map((p) => apart(nearestInPolygon(shape, p), p)))
    expect(got.distance, `pair ${i}`).toBeGreaterThan(least - 0.03)
    expect(got.distance, `pair ${i}`).toBeLessThan(least + 1e-9)
    expect(apart(nearestOnSegment(a, b, got.at), got.at)).toBeCloseTo(got.distance, 9)
    expect(apart(nearestInPolygon(shape, got.at), got.at)).toBeLessThan(1e-9)
  }
})
