import { describe, expect, it } from 'vitest'
import { topPoint } from '../../../src/geometry/girder'
import { allSlices, depthOf, lowestPoint, underside } from '../../../src/geometry/room'
import { seeded, testGirder, testInput, testRoom } from './rooms'

const girder = testGirder('G1', [0, 0, 18], [22.6, 3, 18.5])
const posts = [2.15, 11.25, 20.35]

describe('the underside of a fall room', () => {
  it('is the depth of mechanics section 8 under a stanchion, where the drop is 0 and neighbours are deeper', () => {
    const input = testInput(girder, posts, { side: 0 })
    const room = testRoom(girder, posts, { side: 0 })
    for (const { station, samples } of input.stations) {
      const deepest = Math.max(
        ...samples.map((s, i) => {
          if (!('drop' in s)) throw new Error('a sample is missing')
          const worker = input.workers.find((w) => w.id === input.corners[i]!.worker)!
          return depthOf(worker, s, input.marginBelow)
        }),
      )
      const top = topPoint(input.frame, station, 0.2)
      const found = underside(room, top[0], top[1])!
      // With a body as thin as it may be (0.1 m) neighbours 0.1 m away may reach lower by the line's steepest slope.
      expect(found.z).toBeLessThanOrEqual(top[2] - deepest + 1e-9)
      expect(top[2] - deepest - found.z).toBeLessThan(0.07)
    }
  })

  it('agrees with a brute-force sweep of discs at random places in plan', () => {
    const input = testInput(girder, posts)
    const room = testRoom(girder, posts)
    const seed = 20260101
    const random = seeded(seed)
    for (let n = 0; n < 40; n++) {
      const p = topPoint(input.frame, random() * 24 - 1, (random() - 0.5) * 6)
      const [x, y] = [p[0], p[1]]
      let brute = Number.POSITIVE_INFINITY
      for (const s of allSlices(room)) {
        if (Math.hypot(s.x - x, s.y - y) > s.reach + room.side) continue
        for (let i = -1000; i <= 1000; i++) {
          const t = (s.reach * i) / 1000
          const [fx, fy] = [s.x + s.dx * t, s.y + s.dy * t]
          if (Math.hypot(fx - x, fy - y) > room.side) continue
          brute = Math.min(brute, s.z - Math.sqrt(s.radius ** 2 - t * t))
        }
      }
      const found = underside(room, x, y)
      if (!Number.isFinite(brute)) continue
      expect(found, `seed ${seed}, point ${n}`).not.toBeNull()
      expect(found!.z, `seed ${seed}, point ${n}`).toBeLessThanOrEqual(brute + 1e-9)
      expect(brute - found!.z, `seed ${seed}, point ${n}`).toBeLessThan(0.02)
    }
  })

  it('reaches past the ends and to both sides as far as one can stand, and no farther', () => {
    const flat = testGirder('G1', [0, 0, 18], [40, 0, 18])
    const room = testRoom(flat, [0.4, 10])
    // 0.4 m of girder past the first stanchion: feet reach 0.4 R/r, the body 0.6 m more.
    const reach = Math.max(...room.ends.map((f) => f.reach))
    expect(underside(room, 0.4 - 0.5, 0.2)).not.toBeNull()
    expect(underside(room, 0.4 - reach - 0.7, 0.2)).toBeNull()
    const across = Math.max(...room.slices.map((s) => s.reach))
    expect(underside(room, 5, 0.2 + across + 0.59)).not.toBeNull()
    expect(underside(room, 5, 0.2 - across - 0.59)).not.toBeNull()
    expect(underside(room, 5, 0.2 + across + 0.65)).toBeNull()
  })

  it('adds the excess of the fall in time, the greater one where spans meet', () => {
    const flat = testGirder('G1', [0, 0, 18], [40, 0, 18])
    const plain = lowestPoint(testRoom(flat, [2, 10]))!.z
    const added = lowestPoint(testRoom(flat, [2, 10], { excess: [{ from: 2, to: 10, excess: 0.25 }] }))!.z
    expect(plain - added).toBeCloseTo(0.25, 9)
  })

  it('says why it is not whole', () => {
    const input = testInput(girder, posts)
    input.stations[20]!.samples[1] = { unknown: 'the line law did not converge' }
    const room = testRoom(girder, posts, { stations: input.stations })
    expect(room.unknown).toContain('the line law did not converge')
  })
})
