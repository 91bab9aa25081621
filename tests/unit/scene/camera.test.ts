import fc from 'fast-check'
import { PerspectiveCamera, Vector3 } from 'three'
import { expect, it } from 'vitest'
import type { Vec3 } from '../../../src/plan/types'
import { frameShot } from '../../../src/scene/camera/fit'

const coordinate = fc.double({ min: -60, max: 60, noNaN: true })
const point = fc.tuple(coordinate, coordinate, coordinate)

it('a shot holds every point that it was asked to hold', () => {
  const asked = fc.record({
    points: fc.array(point, { minLength: 1, maxLength: 12 }),
    // Straight down and up the camera's roll is not defined.
    from: point.filter((v) => Math.hypot(v[0], v[1]) > 0.05 * Math.abs(v[2]) + 0.1),
    aspect: fc.double({ min: 0.5, max: 3, noNaN: true }),
  })
  fc.assert(
    fc.property(asked, ({ points, from, aspect }) => {
      const shot = frameShot(points as Vec3[], from as Vec3, { fov: 26, aspect })
      const camera = new PerspectiveCamera(26, aspect, 0.1, 4000)
      camera.up.set(0, 0, 1)
      camera.position.set(...shot.position)
      camera.lookAt(...shot.target)
      camera.updateMatrixWorld()
      for (const p of points) {
        const seen = new Vector3(...(p as Vec3)).project(camera)
        expect(Math.abs(seen.x)).toBeLessThanOrEqual(1)
        expect(Math.abs(seen.y)).toBeLessThanOrEqual(1)
        expect(seen.z).toBeLessThan(1)
      }
    }),
    { numRuns: 500, seed: 323437109 },
  )
})
