import { describe, expect, it } from 'vitest'
import { gapsOfPlan, meshTarget } from '../../../src/geometry/gaps'
import { facetsOf, planeAt } from '../../../src/geometry/gaps/facet'
import { nearestToFacets } from '../../../src/geometry/gaps/nearest'
import { boxSolid, laneSolid } from '../../../src/geometry/gaps/solid'
import type { Facet } from '../../../src/geometry/gaps/types'
import { contains } from '../../../src/geometry/polygon'
import { allSlices, underside } from '../../../src/geometry/room'
import type { BoxObstacle, LaneObstacle, MeshObstacle, Obstacle, Plan, Vec3 } from '../../../src/plan/types'
import { boxTriangles } from '../models/make'
import { seeded, testGirder, testInput, testRoom } from './rooms'

const girder = testGirder('G1', [0, 0, 18], [20, 2, 18.4])
const room = testRoom(girder, [2, 10], { corners: testInput(girder, [2, 10]).corners.slice(0, 4) })

const plan = (obstacles: Obstacle[]): Plan => ({ girders: [girder], obstacles, lines: [] }) as unknown as Plan

const swings = allSlices(room)

/** From one point to the room, if below `least`: every swing tried at many places. Never below the truth. */
function fromPoint([x, y, z]: Vec3, least = Number.POSITIVE_INFINITY): number {
  for (const s of swings) {
    const far = Math.max(0, Math.hypot(x - s.x, y - s.y) - s.reach - room.side)
    if (Math.hypot(far, Math.max(0, s.z - s.radius - z)) >= least) continue
    for (let i = -30; i <= 30; i++) {
      const t = (s.reach * i) / 30
      const beside = Math.max(0, Math.hypot(x - s.x - t * s.dx, y - s.y - t * s.dy) - room.side)
      const above = Math.max(0, s.z - Math.sqrt(s.radius ** 2 - t * t) - z)
      least = Math.min(least, Math.hypot(beside, above))
    }
  }
  return least
}

/** Points of facets on a grid of `parts` and along their edges. */
function pointsOf(facets: Facet[], parts: number): Vec3[] {
  return facets.flatMap(({ points, plane }) => {
    const xs = points.map((p) => p[0])
    const ys = points.map((p) => p[1])
    const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
    const inner = Array.from({ length: (parts + 1) ** 2 }, (_, i): [number, number] => [
      x0 + ((x1 - x0) * (i % (parts + 1))) / parts,
      y0 + ((y1 - y0) * Math.floor(i / (parts + 1))) / parts,
    ]).filter((p) => contains(points, p))
    const edges = points.flatMap((a, i) => {
      const b = points[(i + 1) % points.length]!
      return Array.from({ length: parts + 1 }, (_, k): [number, number] => [
        a[0] + ((b[0] - a[0]) * k) / parts,
        a[1] + ((b[1] - a[1]) * k) / parts,
      ])
    })
    return [...inner, ...edges].map(([x, y]): Vec3 => [x, y, planeAt(plane, x, y)])
  })
}

/** A box or lane of about 2 m, standing or moving, near the room. */
function scene(seed: number): Facet[] {
  const random = seeded(seed * 7919)
  const at = (): Vec3 => [random() * 14 - 1, random() * 9 - 4, 9 + random() * 6]
  if (random() < 0.3) {
    const [a, b] = [at(), at()]
    const lane: LaneObstacle = { id: 'O', name: 'o', kind: 'lane', path: [a, b], width: 1, clearHeight: 1 }
    return laneSolid(lane).facets
  }
  const box: BoxObstacle = {
    id: 'O',
    name: 'o',
    kind: 'box',
    center: at(),
    size: [0.3 + random() * 2, 0.3 + random() * 2, 0.4 + random()],
    turn: random() * 360,
    ...(random() < 0.5 ? { travel: [at()] } : {}),
  }
  return boxSolid(box).facets
}

describe('least distance in any direction', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16])(
    'agrees with brute force, seed %i',
    (seed) => {
      const facets = scene(seed)
      const found = nearestToFacets(room, facets)!
      const brute = pointsOf(facets, 12).reduce((least, p) => fromPoint(p, least), Infinity)
      // Brute force can only miss what lies between its points, which stand up to 0.6 m apart.
      expect(found.distance, `seed ${seed}`).toBeLessThanOrEqual(brute + 1e-3)
      expect(brute - found.distance, `seed ${seed}`).toBeLessThan(0.1)
      // What is told is reached at the place that is told.
      expect(Math.abs(fromPoint(found.at) - found.distance), `seed ${seed}`).toBeLessThan(5e-3)
      expect(found.station).toBeGreaterThanOrEqual(2)
      expect(found.station).toBeLessThanOrEqual(10)
    },
  )

  it.each([21, 22, 23])('of a model is that of trying every triangle, seed %i', (seed) => {
    const random = seeded(seed * 7919)
    const near = (c: Vec3): Vec3 => [c[0] + random() * 1.5, c[1] + random() * 1.5, c[2] + random()]
    const triangles = Array.from({ length: 90 }, (): Vec3[] => {
      const c: Vec3 = [random() * 16 - 2, random() * 12 - 6 + 4 * (seed % 3), random() * 13]
      return [near(c), near(c), near(c)]
    })
    const read = { ok: true, value: { triangles: Float32Array.from(triangles.flat(2)) } } as const
    const target = meshTarget({ id: 'M', name: 'm', kind: 'mesh', file: 'm.stl' }, read)
    if (!target.ok) throw new Error(target.why)
    const found = target.nearest(room, null)!
    const facets = triangles.flatMap((t) => facetsOf(t))
    const brute = pointsOf(facets, 6).reduce((least, p) => fromPoint(p, least), Infinity)
    // A model's figures are of single precision.
    expect(found.distance, `seed ${seed}`).toBeLessThanOrEqual(brute + 1e-3)
    expect(brute - found.distance, `seed ${seed}`).toBeLessThan(0.1)
    expect(Math.abs(fromPoint(found.at) - found.distance), `seed ${seed}`).toBeLessThan(5e-3)
    const one = nearestToFacets(room, facets)!
    expect(found.distance, `seed ${seed}`).toBeCloseTo(one.distance, 4)
  })

  it('is the same to a box as to its model, turned, in millimetres', () => {
    const box: BoxObstacle = { id: 'B', name: 'b', kind: 'box', center: [6, 5.5, 13], size: [2, 2, 2] }
    const triangles = Float32Array.from(boxTriangles([-1000, -1000, -1000], [1000, 1000, 1000]).flat(2))
    const place = { at: [6, 5.5, 13] as Vec3, turn: 90, scale: 0.001 }
    const mesh: MeshObstacle = { id: 'M', name: 'm', kind: 'mesh', file: 'm.stl', ...place }
    const meshes = new Map([['M', meshTarget(mesh, { ok: true, value: { triangles } })]])
    const [a, b] = gapsOfPlan(plan([box, mesh]), [room], meshes, true)
    expect(a!.nearest).toBeGreaterThan(0.1)
    expect(b!.nearest).toBeCloseTo(a!.nearest!, 3)
    expect(b!.nearestAt).toMatchObject({ line: 'L-G1' })
    expect(a!.nearest!).toBeGreaterThan(a!.horizontal! - 1e-3)
  })

  it('is told of every obstacle that is known: 0 in a clash, no more than the gap under the room, none unasked', () => {
    const at: Vec3 = [6, 0.6, 8]
    const under: Obstacle = { id: 'U', name: 'u', kind: 'box', center: at, size: [2, 2, 2] }
    const into: Obstacle = { ...under, id: 'I', center: [6, 0.6, 14] }
    const ground: Obstacle = { id: 'G', name: 'g', kind: 'ground', elevation: 3 }
    const lost: Obstacle = { id: 'L', name: 'l', kind: 'mesh', file: 'lost.stl' }
    const gaps = gapsOfPlan(plan([under, into, ground, lost]), [room], new Map(), true)
    expect(gaps[0]!.nearest).toBeGreaterThan(0)
    expect(gaps[0]!.nearest!).toBeLessThanOrEqual(underside(room, 6, 0.6)!.z - 9 + 1e-3)
    expect(gaps[1]!.nearest).toBe(0)
    expect(gaps[1]!.nearestAt).toMatchObject({ line: 'L-G1', station: gaps[1]!.station })
    expect(gaps[2]!.nearest).toBeCloseTo(gaps[2]!.gap!, 9)
    expect(gaps[3]).toMatchObject({ nearest: null, nearestAt: null })
    expect(gapsOfPlan(plan([under]), [room])[0]!.nearest).toBeNull()
  })
})
