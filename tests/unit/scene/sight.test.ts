import fc from 'fast-check'
import { Vector3 } from 'three'
import { describe, expect, it } from 'vitest'
import type { CrossFrameObstacle, Plan, Vec3 } from '../../../src/plan/types'
import { refPoints } from '../../../src/scene/camera/ref-points'
import { type ShotSource, shotOf } from '../../../src/scene/camera/shots'
import { directionsAbout, partSeen } from '../../../src/scene/camera/sight'
import { sightPoints } from '../../../src/scene/camera/sight-points'
import { solidsOf } from '../../../src/scene/camera/solids'
import type { Ref } from '../../../src/state/refs'
import { sample } from '../plan-support'

const SEED = 20261126
const lens = { fov: 26, aspect: 1.3 }

const inTheWay = (plan: Plan, without: string[] = []) =>
  solidsOf({ plan, without, places: new Map(), model: () => null })

const source = (plan: Plan): ShotSource => ({
  ...{ plan, line: null, results: null, details: [], hidden: [] },
  ...{ places: new Map(), model: () => null },
})

/** Four girders side by side with bracing between them: from either side the outer girders stand before it. */
function braced(): Plan {
  const plan = sample('four-girder-bay')
  const [a, b] = plan.girders.slice(1)
  const frame: CrossFrameObstacle = {
    ...{ id: 'X', name: 'bracing', kind: 'cross-frame', station: 9, barSize: 0.1 },
    between: [a!.id, b!.id],
  }
  return { ...plan, obstacles: [...plan.obstacles.filter((o) => o.id !== 'X'), frame] }
}

describe('the direction of a flight', () => {
  it('goes out from the present one, and meets every side', () => {
    const from: Vec3 = [1, 2, 0.5]
    const ways = directionsAbout(from).map((d) => new Vector3(...d))
    const apart = ways.map((d) => d.angleTo(new Vector3(...from)))
    expect(apart[0]).toBeCloseTo(0, 6)
    for (const [i, a] of apart.slice(1).entries()) expect(a).toBeGreaterThanOrEqual(apart[i]! - 1e-6)
    expect(Math.max(...apart)).toBeGreaterThan(2.8)
  })

  it('stays where what is flown to is seen', () => {
    const plan: Plan = { ...braced(), girders: [], lines: [], workers: [] }
    plan.obstacles = [{ id: 'B', name: 'b', kind: 'box', center: [0, 0, 9], size: [1, 1, 1] }]
    const shot = shotOf({ ref: { kind: 'obstacle', id: 'B' } }, source(plan), lens, [1, 2, 0.4])!
    const way = new Vector3(...shot.position).sub(new Vector3(...shot.target))
    expect(way.angleTo(new Vector3(1, 2, 0.4))).toBeLessThan(1e-3)
  })

  const plan = braced()
  const refs: Ref[] = [
    ...plan.girders.map((g) => ({ kind: 'girder', id: g.id }) as Ref),
    ...plan.girders.flatMap((g) => g.loops.map((r) => ({ kind: 'loop-row', id: r.id }) as Ref)),
    ...(plan.decks ?? []).map((d) => ({ kind: 'deck', id: d.id }) as Ref),
    ...plan.lines.map((l) => ({ kind: 'line', id: l.id }) as Ref),
    ...plan.lines.flatMap((l) => l.stanchions.map((s) => ({ kind: 'stanchion', id: s.id }) as Ref)),
    ...plan.lines.flatMap((l) => l.tieBacks.map((t) => ({ kind: 'tie-back', id: t.id }) as Ref)),
    ...plan.workers.map((w) => ({ kind: 'worker', id: w.id }) as Ref),
    ...plan.obstacles.map((o) => ({ kind: 'obstacle', id: o.id }) as Ref),
  ].filter((ref) => refPoints(plan, ref).length > 0)

  it.each(refs)('shows $kind $id, from wherever the camera comes', (ref) => {
    const places = sightPoints(plan, ref)
    expect(places.length).toBeGreaterThan(0)
    const hides = inTheWay(plan, [ref.id])
    const direction = fc.tuple(
      fc.double({ min: 0, max: 6.28, noNaN: true }),
      fc.double({ min: -0.8, max: 1, noNaN: true }),
    )
    fc.assert(
      fc.property(direction, ([turn, up]) => {
        const shot = shotOf({ ref }, source(plan), lens, [Math.cos(turn), Math.sin(turn), up])!
        expect(partSeen(places, shot.position, hides)).toBeGreaterThanOrEqual(0.75)
      }),
      { numRuns: 12, seed: SEED },
    )
  })

  it('shows a place in space under a girder, from wherever the camera comes', () => {
    const g = plan.girders[1]!
    const point: Vec3 = [g.start[0] + 9, g.start[1] + 0.6, g.start[2] - 1.2]
    const hides = inTheWay(plan)
    for (let turn = 0; turn < 6.28; turn += 0.5) {
      const shot = shotOf({ point }, source(plan), lens, [Math.cos(turn), Math.sin(turn), 0.7])!
      expect(hides(shot.position, point)).toBe(false)
    }
  })
})
