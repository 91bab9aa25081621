import { expect, it } from 'vitest'
import { bentCapacity, boltEdgeDistance, straightCapacity } from './bracket-capacity'

// ASTM A615 bar no. 6: nominal diameter 0.750 in, area 0.44 in2; grade 60: 60 ksi (values from memory).
const INCH = 0.0254
const KSI = 6.894757e6
const LBF = 4.4482216

it('has two legs of a no. 6 bar of grade 60 yield at 2 x 0.44 in2 x 60 ksi = 53 kip', () => {
  expect(straightCapacity(0.75 * INCH, 60 * KSI) / LBF / 1000).toBeCloseTo(2 * 0.4418 * 60, 1)
})

it('bends a bar at d3/6 x yield over the height (plastic modulus of a round bar, any textbook)', () => {
  const moment = ((0.75 * INCH) ** 3 / 6) * 60 * KSI
  expect(bentCapacity(0.75 * INCH, 60 * KSI, 0.1)).toBeCloseTo(moment / 0.1, 6)
  expect(bentCapacity(0.75 * INCH, 60 * KSI, 0)).toBeNull()
  expect(bentCapacity(0.75 * INCH, 60 * KSI, -0.1)).toBeNull()
})

it('measures a bolt to the edge from either side of the middle', () => {
  expect(boltEdgeDistance(0.6, 0.1, 0.2)).toBeCloseTo(0.1, 12)
  expect(boltEdgeDistance(0.6, -0.1, 0.2)).toBeCloseTo(0.1, 12)
  expect(boltEdgeDistance(0.4, 0.15, 0.2)).toBeCloseTo(-0.05, 12)
})
