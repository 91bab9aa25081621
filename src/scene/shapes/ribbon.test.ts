import { describe, expect, test } from 'vitest'
import { ribbonGeometry, setSegments } from './ribbon'

/** Corners of a segment, as the shader gets them. */
function cornersOf(points: readonly number[]) {
  const geometry = ribbonGeometry(points.length / 6)
  setSegments(geometry, points)
  const of = (name: string, size: number) => {
    const { array } = geometry.getAttribute(name)
    return Array.from({ length: array.length / size }, (_, i) => [...array.slice(i * size, (i + 1) * size)])
  }
  return {
    own: of('position', 3),
    other: of('other', 3),
    along: of('along', 2),
    side: of('side', 1),
    geometry,
  }
}

describe('ribbons', () => {
  const two = [0, 0, 0, 3, 4, 0, 3, 4, 0, 3, 4, 2]

  test('have two corners at each end, that look at the other end', () => {
    const { own, other } = cornersOf(two)
    expect(own.slice(0, 4)).toEqual([
      [0, 0, 0],
      [0, 0, 0],
      [3, 4, 0],
      [3, 4, 0],
    ])
    expect(other.slice(4)).toEqual([
      [3, 4, 2],
      [3, 4, 2],
      [3, 4, 0],
      [3, 4, 0],
    ])
  })

  test('measure along all of their segments, so that dashes go on across them', () => {
    const { along } = cornersOf(two)
    expect(along[0]).toEqual([0, 5])
    expect(along[2]).toEqual([5, 0])
    expect(along[4]).toEqual([5, 7])
  })

  test('lie with either long edge on one side of their axis: no ribbon is twisted', () => {
    const { own, other, side } = cornersOf([0, 0, 0, 1, 0, 0])
    const offset = own.map((p, i) => {
      const way = Math.sign(other[i]![0]! - p[0]!)
      return way * side[i]![0]!
    })
    expect(offset).toEqual([1, -1, 1, -1])
  })

  test('reach as far as what was written over them', () => {
    const { geometry } = cornersOf(two)
    geometry.computeBoundingSphere()
    setSegments(
      geometry,
      two.map((v) => v + 100),
    )
    geometry.computeBoundingBox()
    expect(geometry.boundingBox?.min.toArray()).toEqual([100, 100, 100])
  })

  test('can be more than sixteen bits count', () => {
    const geometry = ribbonGeometry(20_000)
    expect(geometry.index?.getX(19_999 * 6 + 5)).toBe(79_999)
  })
})
