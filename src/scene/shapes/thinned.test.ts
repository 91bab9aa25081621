import { expect, it } from 'vitest'
import { thinned } from './thinned'

/** Triangles whose nine numbers all are their place among them. */
const numbered = (count: number): Float32Array =>
  Float32Array.from({ length: count * 9 }, (_, i) => Math.floor(i / 9))

it('keeps whole triangles, evenly from first to last, and no more than may be', () => {
  for (const [count, most] of [
    [10, 4],
    [1000, 37],
    [7, 7],
    [8, 7],
    [1, 1],
  ] as const) {
    const kept = thinned(numbered(count), most)
    const places = Array.from({ length: kept.length / 9 }, (_, t) => [...kept.slice(t * 9, t * 9 + 9)])
    expect(places.length).toBeLessThanOrEqual(most)
    for (const place of places) expect(new Set(place).size).toBe(1)
    const steps = places.slice(1).map((p, i) => p[0]! - places[i]![0]!)
    expect(new Set(steps).size).toBeLessThanOrEqual(1)
    expect(places[0]![0]).toBe(0)
    expect(count - 1 - places.at(-1)![0]!).toBeLessThan(steps[0] ?? count)
  }
})

it('is all of them where there are few', () => {
  const few = numbered(5)
  expect(thinned(few, 5)).toBe(few)
})
