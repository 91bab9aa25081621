import { describe, expect, it } from 'vitest'
import { nearestDistance } from '../../../src/geometry/gaps'
import { type Skin, skinOf, underside } from '../../../src/geometry/room'
import type { BoxObstacle, MeshObstacle } from '../../../src/plan/types'
import { boxTriangles } from '../models/make'
import { testGirder, testInput, testRoom } from './rooms'

const girder = testGirder('G1', [0, 0, 18], [20, 0, 18])
const room = testRoom(girder, [2, 10], { corners: testInput(girder, [2, 10]).corners.slice(0, 2) })
const skin = skinOf(room) as Skin
const box: BoxObstacle = { id: 'B', name: 'b', kind: 'box', center: [6, 6, 15], size: [2, 2, 2] }

/** From every corner of the skin to an upright box: exact where the box's face is flat and the skin is the nearer corner. */
function brute(low: number[], high: number[]): number {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < skin.positions.length; i += 3) {
    const off = [0, 1, 2].map((k) => {
      const v = skin.positions[i + k]!
      return Math.max(0, low[k]! - v, v - high[k]!)
    })
    least = Math.min(least, Math.hypot(...off))
  }
  return least
}

describe('least distance in any direction', () => {
  it('from a box beside the room is what trying every corner of the skin gives', () => {
    const got = nearestDistance(skin, box, null, new Map())!
    expect(Math.abs(got - brute([5, 5, 14], [7, 7, 16]))).toBeLessThan(0.02)
  })

  it('is the same to the same box as a model, turned, in millimetres', () => {
    const triangles = Float32Array.from(boxTriangles([-1000, -1000, -1000], [1000, 1000, 1000]).flat(2))
    const mesh: MeshObstacle = {
      id: 'M',
      name: 'm',
      kind: 'mesh',
      file: 'm.stl',
      at: [6, 6, 15],
      turn: 90,
      scale: 0.001,
    }
    const models = new Map([['m.stl', { ok: true as const, value: { triangles } }]])
    expect(nearestDistance(skin, mesh, null, models)).toBeCloseTo(
      nearestDistance(skin, box, null, models)!,
      3,
    )
    expect(nearestDistance(skin, mesh, null, new Map())).toBeNull()
  })

  it('is 0 in a clash, and no more than the gap under the room', () => {
    expect(nearestDistance(skin, box, -0.1, new Map())).toBe(0)
    const under: BoxObstacle = { ...box, center: [6, 0, 8] }
    const gap = underside(room, 6, 0)!.z - 9
    const got = nearestDistance(skin, under, gap, new Map())!
    expect(got).toBeGreaterThan(0)
    expect(got).toBeLessThan(gap + 0.02)
  })
})
