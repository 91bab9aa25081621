import { describe, expect, it } from 'vitest'
import type { Vec3 } from '../../../src/plan/types'
import { emptyPicture, fillPicture } from '../../../src/scene/play/frame-at'
import { unrollAlong } from '../../../src/scene/play/unroll'
import type { FallHistory } from '../../../src/solver/time/types'

const heads: Vec3[] = [
  [0, 0, 10],
  [3, 4, 10],
  [3, 10, 10],
]

/** Two frames of three nodes and one worker tied to the middle node, who falls by 2 m while the node gives 0.5 m. */
const history = {
  frames: 2,
  nodes: 3,
  workers: 1,
  times: new Float64Array([0, 0.1]),
  x: new Float32Array([0, 2.5, 5, 0, 2.5, 5]),
  z: new Float32Array([10, 10, 10, 10, 9.5, 10]),
  workerX: new Float32Array([2.5, 2.5]),
  workerZ: new Float32Array([9, 7]),
  connectorForce: new Float32Array([0, 4000]),
  attachedNode: new Int32Array([1]),
} as unknown as FallHistory

describe('the plane of a fall laid back along the line', () => {
  it('turns with the line at its stanchions and goes on past the ends', () => {
    const unroll = unrollAlong(heads)
    const at = (x: number): number[] => {
      const to = new Float32Array(3)
      unroll(x, 7, to, 0)
      return [...to].map((v) => Math.round(v * 1e4) / 1e4)
    }
    expect(at(2.5)).toEqual([1.5, 2, 7])
    expect(at(5)).toEqual([3, 4, 7])
    expect(at(8)).toEqual([3, 7, 7])
    expect(at(-5)).toEqual([-3, -4, 7])
    expect(at(12)).toEqual([3, 11, 7])
  })
})

describe('a picture of a fall', () => {
  const fill = (frame: number, exaggerate = 1) => {
    const picture = emptyPicture(history)
    fillPicture(picture, history, frame, unrollAlong(heads), exaggerate)
    return picture
  }

  it('is the history at its frames and mixed between them', () => {
    expect(fill(1).rope[5]).toBeCloseTo(9.5, 5)
    expect(fill(0.5).rope[5]).toBeCloseTo(9.75, 5)
    expect(fill(0.5).rings[2]).toBeCloseTo(8, 5)
    expect(fill(0).slack).toEqual([true])
    expect(fill(1).slack).toEqual([false])
  })

  it('stays at its ends when asked for more', () => {
    expect(fill(9).rings[2]).toBeCloseTo(7, 5)
    expect(fill(-3).rings[2]).toBeCloseTo(9, 5)
  })

  it('ties the connector to its node', () => {
    expect([...fill(1).ties]).toEqual([...fill(1).rope.subarray(3, 6)])
  })

  it('exaggerates how far the rope moved, and moves the body along unstretched', () => {
    const picture = fill(1, 3)
    expect(picture.rope[5]).toBeCloseTo(10 - 3 * 0.5, 5)
    expect(picture.ties[2]! - picture.rings[2]!).toBeCloseTo(2.5, 5)
  })
})
