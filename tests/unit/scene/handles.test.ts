import { Object3D, Ray, Vector3 } from 'three'
import { describe, expect, it } from 'vitest'
import { alongAxis, nearestPoint, onLevel } from '../../../src/scene/handles/rays'
import { gripsFirst } from '../../../src/scene/pick'

const ray = (from: [number, number, number], to: [number, number, number]): Ray =>
  new Ray(new Vector3(...from), new Vector3(...to).sub(new Vector3(...from)).normalize())

describe('the pointer on an axis', () => {
  it('gives the station that it points at', () => {
    expect(alongAxis(ray([0, -20, 30], [7.5, 0, 18]), [0, 0, 18], [1, 0, 0])).toBeCloseTo(7.5, 9)
  })

  it('gives the nearest one where it points past', () => {
    const along: [number, number, number] = [0.6, 0.8, 0]
    const at = alongAxis(ray([10, -30, 25], [4, 9, 19]), [1, 2, 18], along)!
    const gap = (t: number): number =>
      ray([10, -30, 25], [4, 9, 19]).distanceSqToPoint(new Vector3(1 + 0.6 * t, 2 + 0.8 * t, 18))
    for (const step of [-0.01, 0.01]) expect(gap(at)).toBeLessThan(gap(at + step))
  })

  it('gives nothing where it looks along the axis', () => {
    expect(alongAxis(ray([-50, 0, 18], [10, 0, 18]), [0, 0, 18], [1, 0, 0])).toBeNull()
  })
})

describe('the pointer on a level', () => {
  it('meets it', () => {
    expect(onLevel(ray([0, 0, 10], [3, 4, 5]), 5)).toEqual([3, 4, 5].map((v) => expect.closeTo(v, 9)))
  })

  it('meets nothing above the horizon', () => {
    expect(onLevel(ray([0, 0, 10], [10, 0, 11]), 5)).toBeNull()
  })
})

it('the nearest of some points is the one under the pointer', () => {
  const points: [number, number, number][] = [
    [0, 0, 0],
    [1, 0, 0],
    [2, 0, 0],
  ]
  expect(nearestPoint(ray([1.2, -5, 3], [1.1, 0, 0]), points)).toBe(1)
  expect(nearestPoint(ray([0, 0, 1], [1, 0, 0]), [])).toBe(-1)
})

describe('grips before bodies', () => {
  const hit = (distance: number, grip: boolean) => {
    const object = new Object3D()
    object.userData = grip ? { grip: true } : {}
    return { distance, object, point: new Vector3() }
  }

  it('takes a grip that a body just hides', () => {
    const [body, grip] = [hit(10, false), hit(10.3, true)]
    expect(gripsFirst([body, grip])).toEqual([grip, body])
  })

  it('does not reach through a whole girder', () => {
    const [body, grip] = [hit(10, false), hit(14, true)]
    expect(gripsFirst([body, grip])).toEqual([body, grip])
  })
})
