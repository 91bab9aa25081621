import { expect, it } from 'vitest'
import { seeded } from '../../../tests/unit/room/rooms'
import { triangleIndex } from './bvh'

const SEED = 20261127

it(`tells of its progress by hundredths, however many triangles there are (seed ${SEED})`, () => {
  const next = seeded(SEED)
  const triangles = Float32Array.from({ length: 9 * 20_000 }, () => 50 * next())
  const told: number[] = []
  expect(triangleIndex(triangles, (share) => told.push(share)).triangles).toBe(20_000)
  expect(told.length).toBeGreaterThan(50)
  expect(told.length).toBeLessThanOrEqual(101)
  expect(told.at(-1)).toBeGreaterThanOrEqual(0.99)
  for (const [i, share] of told.slice(1).entries()) expect(share).toBeGreaterThan(told[i]!)
})
