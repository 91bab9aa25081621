/** Facets of flat polygons in space: planes through their corners, and of upright ones the edges. */
import { describe, expect, it } from 'vitest'
import { expectClose } from '../../../tests/support/close'
import type { Vec3 } from '../../plan/types'
import { doubleArea } from '../polygon'
import { facetsOf, levelFacet, planeAt } from './facet'
import type { Facet, Sweep } from './types'

const through = (facet: Facet, corners: Vec3[]): void => {
  for (const [x, y, z] of corners) expectClose(planeAt(facet.plane, x, y), z, { abs: 1e-9 }, `at ${x}, ${y}`)
}
const SWEEP: Sweep = { from: [0, 0, 0], to: [5, 0, 0], origin: [1, 1], edge: [0, 1] }

describe('a polygon that can be seen from above', () => {
  const corners: Vec3[] = [
    [10, 5, 3],
    [10, 8, 3.9],
    [14, 8, 2.9],
    [14, 5, 2],
  ]
  it('is one facet: its plane through every corner, its top the highest, anticlockwise from above', () => {
    for (const some of [corners, [...corners].reverse()]) {
      const [facet, more] = facetsOf(some)
      expect(more).toBeUndefined()
      through(facet!, corners)
      expect([facet!.top, 'sweep' in facet!]).toEqual([3.9, false])
      expect(doubleArea(facet!.points)).toBe(24)
    }
    expect(facetsOf(corners, SWEEP)[0]!.sweep).toBe(SWEEP)
  })

  it('is one facet too where it is steep, or small', () => {
    const steep: Vec3[] = [
      [0, 0, 0],
      [40, 0, 0],
      [40, 2e-3, 30],
      [0, 2e-3, 30],
    ]
    expect(facetsOf(steep).length).toBe(1)
    through(facetsOf(steep)[0]!, steep)
    const small: Vec3[] = [
      [1, 1, 2],
      [1.01, 1, 2],
      [1, 1.01, 2],
    ]
    expect(facetsOf(small).length).toBe(1)
    through(facetsOf(small)[0]!, small)
  })

  it('is its edges where it is upright, or too small to have a plane', () => {
    const nearly: Vec3[] = [
      [0, 0, 0],
      [4, 0, 0],
      [4, 2e-6, 3],
      [0, 2e-6, 3],
    ]
    expect(facetsOf(nearly).length).toBe(4)
    const speck: Vec3[] = [
      [0, 0, 1],
      [1e-8, 0, 1],
      [0, 1e-8, 1],
    ]
    expect(facetsOf(speck).length).toBe(3)
  })
})

describe('an upright polygon', () => {
  const corners: Vec3[] = [
    [10, 5, 1],
    [13, 9, 2],
    [13, 9, 6],
    [10, 5, 4],
  ]
  it.each([[undefined], [SWEEP]])('is the segments that bound it, upright ones their upper end', (sweep) => {
    const facets = facetsOf(corners, sweep)
    expect(facets.map((f) => [f.points, f.top])).toEqual([
      [
        [
          [10, 5],
          [13, 9],
        ],
        2,
      ],
      [[[13, 9]], 6],
      [
        [
          [13, 9],
          [10, 5],
        ],
        6,
      ],
      [[[10, 5]], 4],
    ])
    through(facets[0]!, corners.slice(0, 2))
    through(facets[1]!, [corners[2]!])
    through(facets[2]!, corners.slice(2, 4))
    through(facets[3]!, [corners[3]!])
    // Across a segment nothing rises.
    for (const { plane } of facets) expectClose(plane.gx * 4 - plane.gy * 3, 0, { abs: 1e-12 })
    for (const f of facets) expect([f.sweep, 'sweep' in f]).toEqual([sweep, sweep !== undefined])
  })

  it('of a millimetre is segments yet', () => {
    const tiny = corners.map(([x, y, z]): Vec3 => [x * 1e-3, y * 1e-3, z])
    expect(facetsOf(tiny).map((f) => f.points.length)).toEqual([2, 1, 2, 1])
  })
})

it('a level facet lies at its elevation, anticlockwise, and keeps its sweep', () => {
  const f = levelFacet(
    [
      [0, 0],
      [0, 2],
      [3, 2],
    ],
    7,
  )
  expect([f.top, planeAt(f.plane, 99, -5), doubleArea(f.points), 'sweep' in f]).toEqual([7, 7, 6, false])
  expect(
    levelFacet(
      [
        [0, 0],
        [0, 2],
        [3, 2],
      ],
      7,
      SWEEP,
    ).sweep,
  ).toBe(SWEEP)
})
