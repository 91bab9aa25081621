/** One swing (mechanics section 8), each figure worked out by hand. */
import { describe, expect, it } from 'vitest'
import { expectClose } from '../../../tests/support/close'
import { connectorReach, depthOf, feetReach, swingOf } from './swing'
import type { RoomSample, RoomWorker } from './types'

const lanyard: RoomWorker = {
  id: 'W1',
  type: 'lanyard',
  length: 1.8,
  harnessStretch: 0.3,
  dRingHeight: 1.45,
}
const retractable: RoomWorker = { ...lanyard, type: 'retractable', length: 0.6 }
const sample: RoomSample = { drop: 0.5, extension: 0.9, height: 1.05 }

describe('radii of a swing', () => {
  it('of a lanyard are its length and extension, then the body below the D-ring', () => {
    expectClose(swingOf(lanyard, sample).dRing, 1.8 + 0.9, { abs: 1e-12 })
    expectClose(swingOf(lanyard, sample).feet, 1.8 + 0.9 + 0.3 + 1.45, { abs: 1e-12 })
    expectClose(swingOf(lanyard, { ...sample, height: 2.2 }).dRing, 2.7, { abs: 1e-12 }, 'a high line')
  })

  it('of a retractable have what it paid out up to a line above the D-ring, and nothing to one below', () => {
    expectClose(swingOf(retractable, { ...sample, height: 2.2 }).dRing, 0.6 + 0.75 + 0.9, { abs: 1e-12 })
    expectClose(swingOf(retractable, sample).dRing, 0.6 + 0.9, { abs: 1e-12 })
    expectClose(swingOf(retractable, { ...sample, height: 2.2 }).feet, 2.25 + 1.75, { abs: 1e-12 })
  })
})

it('leaves the feet as deep as the sum from the line down says', () => {
  // Rope 1.05 up, 0.5 down under the fall; 2.7 connector, 0.3 harness, 1.45 body; 0.6 kept free.
  expectClose(depthOf(lanyard, sample, 0.6), 2.7 + 0.3 + 1.45 - (1.05 - 0.5) + 0.6, { abs: 1e-12 })
  // A high line keeps them above the girder's top: no max(0).
  expectClose(depthOf(lanyard, { drop: 0, extension: 0, height: 4 }, 0), -0.45, { abs: 1e-12 })
})

describe('how far one stands from the line', () => {
  it('is the side of a 3-4-5 triangle under the connector, from above and from below', () => {
    const worker = { ...lanyard, length: 1.5 }
    expectClose(connectorReach(worker, 1.45 - 0.9), 1.2, { abs: 1e-12 })
    expectClose(connectorReach(worker, 1.45 + 0.9), 1.2, { abs: 1e-12 })
    expectClose(connectorReach(worker, 1.45), 1.5, { abs: 1e-12 })
    expectClose(connectorReach(worker, 1.45 - 1.5), 0, { abs: 1e-7 }, 'just upright')
  })

  it('is the length of who must stoop, and without end on a retractable', () => {
    expect(connectorReach({ ...lanyard, length: 0.5 }, 0.2)).toBe(0.5)
    expect(connectorReach(retractable, 1)).toBe(Number.POSITIVE_INFINITY)
  })
})

it('carries the feet out as far as the D-ring, in the ratio of the radii', () => {
  const swing = { dRing: 2, feet: 3.5 }
  expectClose(feetReach(swing, 1), 1.75, { abs: 1e-12 })
  expectClose(feetReach(swing, 2), 3.5, { abs: 1e-12 })
  expect(feetReach(swing, 5)).toBe(3.5)
  expect(feetReach(swing, 0)).toBe(0)
  expect(feetReach({ dRing: 0, feet: 1.5 }, 1)).toBe(0)
})
