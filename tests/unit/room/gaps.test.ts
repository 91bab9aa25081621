import { describe, expect, it } from 'vitest'
import { gapsOfPlan } from '../../../src/geometry/gaps'
import { planeAt } from '../../../src/geometry/gaps/facet'
import { crossFrameSolid, outsideSurface } from '../../../src/geometry/gaps/girder-solid'
import { gapToFacets, planDistance } from '../../../src/geometry/gaps/room-gap'
import { boxSolid, laneSolid } from '../../../src/geometry/gaps/solid'
import type { Facet } from '../../../src/geometry/gaps/types'
import { contains } from '../../../src/geometry/polygon'
import { lowestPoint, type Room, underside } from '../../../src/geometry/room'
import type { BoxObstacle, LaneObstacle, Obstacle, Plan } from '../../../src/plan/types'
import { seeded, testGirder, testRoom } from './rooms'

const girder = testGirder('G1', [0, 0, 18], [22.6, 3, 18.5])
const room = testRoom(girder, [2.15, 11.25, 20.35])

/** Direct evaluation on a fine grid over every facet: never below the truth, above it by the grid's coarseness. */
function bruteGap(of: Room, facets: Facet[], parts: number): number {
  let least = Number.POSITIVE_INFINITY
  for (const facet of facets) {
    const xs = facet.points.map((p) => p[0])
    const ys = facet.points.map((p) => p[1])
    const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
    for (let i = 0; i <= parts; i++) {
      for (let k = 0; k <= parts; k++) {
        const p: [number, number] = [x0 + ((x1 - x0) * i) / parts, y0 + ((y1 - y0) * k) / parts]
        if (!contains(facet.points, p)) continue
        const under = underside(of, p[0], p[1])
        if (under) least = Math.min(least, under.z - planeAt(facet.plane, p[0], p[1]))
      }
    }
  }
  return least
}

function randomBox(random: () => number): BoxObstacle {
  const at = (): [number, number, number] => [random() * 24, random() * 7 - 2, 10 + random() * 3]
  return {
    id: 'O',
    name: 'box',
    kind: 'box',
    center: at(),
    size: [0.2 + random() * 4, 0.2 + random() * 4, 0.5 + random()],
    turn: random() * 360,
    ...(random() < 0.5 ? { travel: [at(), at()] } : {}),
  }
}

function randomLane(random: () => number): LaneObstacle {
  const at = (): [number, number, number] => [random() * 30 - 4, random() * 12 - 6, random() * 4]
  return {
    id: 'O',
    name: 'lane',
    kind: 'lane',
    path: [at(), at(), at()],
    width: 1 + random() * 4,
    clearHeight: 5,
  }
}

/** The underside at a place, from the side where it is lower if the place is on the edge of a swing. */
function lowestAround(x: number, y: number): number {
  const around = Array.from({ length: 16 }, (_, i) => (i * Math.PI) / 8)
  const places = [[x, y], ...around.map((a) => [x + 1e-6 * Math.cos(a), y + 1e-6 * Math.sin(a)])]
  return Math.min(...places.map(([px, py]) => underside(room, px!, py!)?.z ?? Number.POSITIVE_INFINITY))
}

describe('gaps of plain obstacles', () => {
  it.each([11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22])('agrees with brute force, seed %i', (seed) => {
    const random = seeded(seed * 7919)
    const { facets } = random() < 0.6 ? boxSolid(randomBox(random)) : laneSolid(randomLane(random))
    const found = gapToFacets(room, facets)
    const brute = bruteGap(room, facets, 48)
    if (!found) {
      expect(brute).toBe(Number.POSITIVE_INFINITY)
      expect(planDistance(room, facets)!.distance).toBeGreaterThan(0)
      return
    }
    // The grid can only miss: its cells are up to 0.2 m wide, and edges of the room are steep.
    expect(found.gap).toBeLessThanOrEqual(brute + 1e-6)
    const [x, y, z] = found.at
    const under = lowestAround(x, y)
    // What is told is reached: at the place that is told, direct evaluation gives the same gap.
    expect(Math.abs(under - z - found.gap)).toBeLessThan(2e-3)
    if (Number.isFinite(brute)) expect(brute - found.gap).toBeLessThan(0.4)
  })

  it('gives the depth of the line under a box that lies across its middle', () => {
    const flat = testGirder('G1', [0, 0, 18], [22.6, 0, 18])
    const own = testRoom(flat, [2.15, 11.25, 20.35])
    const { facets } = boxSolid({ id: 'B', name: 'b', kind: 'box', center: [6.7, 0, 10], size: [4, 6, 2] })
    expect(gapToFacets(own, facets)!.gap).toBeCloseTo(lowestPoint(own)!.z - 11, 6)
  })

  it('finds the worst position along a path, and says where the box stands then', () => {
    const flat = testGirder('G1', [0, 0, 18], [22.6, 0, 18])
    const own = testRoom(flat, [2.15, 11.25, 20.35])
    const box: BoxObstacle = {
      id: 'B',
      name: 'lift',
      kind: 'box',
      center: [6.7, -20, 10],
      size: [1, 1, 2],
      travel: [
        [6.7, -20, 10],
        [6.7, 20, 10],
      ],
    }
    const found = gapToFacets(own, boxSolid(box).facets)!
    expect(found.gap).toBeCloseTo(lowestPoint(own)!.z - 11, 6)
    // The lowest feet stand at y = 0.2: some part of the box must be within the body's half-width of them.
    expect(Math.abs(found.centre![1] - 0.2)).toBeLessThanOrEqual(0.5 + own.side + 1e-6)
    expect(found.centre![2]).toBeCloseTo(10, 9)
  })
})

describe('a box that travels', () => {
  it.each([31, 33, 34, 35, 37])('is worst where standing anywhere on its path is worst, seed %i', (seed) => {
    const random = seeded(seed * 104729)
    const at = (): [number, number, number] => [random() * 22, random() * 8 - 3, 9 + random() * 4]
    const size: [number, number, number] = [0.3 + random(), 0.3 + random(), 1]
    const path = [at(), at(), at()]
    const still = { id: 'O', name: 'lift', kind: 'box', size, turn: random() * 90 } as const
    const box: BoxObstacle = { ...still, center: path[0]!, travel: path.slice(1) }
    const found = gapToFacets(room, boxSolid(box).facets)
    let least = Number.POSITIVE_INFINITY
    for (let i = 0; i <= 400; i++) {
      const leg = Math.min(1, Math.floor(i / 200))
      const share = i / 200 - leg
      const center = [0, 1, 2].map((k) => path[leg]![k]! + (path[leg + 1]![k]! - path[leg]![k]!) * share)
      const there = gapToFacets(
        room,
        boxSolid({ ...still, center: center as [number, number, number] }).facets,
      )
      least = Math.min(least, there?.gap ?? Number.POSITIVE_INFINITY)
    }
    if (!found) return expect(least).toBe(Number.POSITIVE_INFINITY)
    // Standing still at places 7 cm apart it can only be better, and hardly so.
    expect(found.gap, `seed ${seed}`).toBeLessThanOrEqual(least + 1e-4)
    expect(least - found.gap, `seed ${seed}`).toBeLessThan(0.05)
    const told = gapToFacets(room, boxSolid({ ...still, center: found.centre! }).facets)!
    expect(Math.abs(told.gap - found.gap), `seed ${seed}`).toBeLessThan(5e-3)
  })
})

const plan = (obstacles: Obstacle[], girders = [girder]): Plan => ({
  format: 'fallroom-plan',
  version: 1,
  title: 't',
  units: 'si',
  basis: {} as Plan['basis'],
  girders,
  lines: [],
  workers: [],
  obstacles,
  parts: [],
})

describe('gaps of a plan', () => {
  it('takes the margin off, tells whose and where, and lists the girders', () => {
    const low = lowestPoint(room)!
    const gaps = gapsOfPlan(plan([{ id: 'O', name: 'ground', kind: 'ground', elevation: 6, margin: 0.25 }]), [
      room,
    ])
    expect(gaps.map((g) => g.id)).toEqual(['O', 'G1'])
    expect(gaps[0]!.gap).toBeCloseTo(low.z - 6.25, 9)
    expect(gaps[0]!.line).toBe('L-G1')
    expect(gaps[0]!.station).toBeCloseTo(low.slice.station, 9)
    expect(gaps[0]!.worker).toBe(room.corners[low.slice.corner]!.worker)
    expect(gaps[0]!.corner).toEqual({ line: 'soft', connector: 'low' })
  })

  it('tells the horizontal distance where nothing is shared', () => {
    const flat = testGirder('G1', [0, 0, 18], [22.6, 0, 18])
    const own = testRoom(flat, [2, 20])
    const far: Obstacle = { id: 'O', name: 'pier', kind: 'box', center: [10, 12, 5], size: [2, 2, 4] }
    const gap = gapsOfPlan(plan([far], [flat]), [own])[0]!
    const widest = Math.max(...own.slices.map((s) => s.reach))
    expect(gap.gap).toBeNull()
    expect(gap.horizontal).toBeCloseTo(11 - 0.2 - widest - own.side, 3)
  })

  it('does not know the gap of a model that was not read, nor any gap of a room with a hole, unless it clashes', () => {
    const mesh: Obstacle = { id: 'M', name: 'crane', kind: 'mesh', file: 'crane.glb' }
    const holed = { ...room, unknown: 'at station 3 m: the line law did not converge' }
    const ground = (elevation: number): Obstacle => ({
      id: `O${elevation}`,
      name: 'g',
      kind: 'ground',
      elevation,
    })
    const gaps = gapsOfPlan(plan([mesh, ground(0), ground(17)]), [holed])
    expect(gaps[0]).toMatchObject({ gap: null, unknown: 'the model file crane.glb was not read' })
    expect(gaps[1]!.gap).toBeNull()
    expect(gaps[1]!.unknown).toContain('did not converge')
    expect(gaps[2]!.gap).toBeLessThan(0)
    expect(gaps[2]!.unknown).toBeUndefined()
  })

  it('counts a neighbour girder in reach and the own bottom flange only where it sticks out', () => {
    const own = testGirder('G1', [0, 0, 18], [22.6, 0, 18])
    const near = testGirder('G2', [0, 1.9, 18], [22.6, 1.9, 18])
    const far = testGirder('G3', [0, 4, 18], [22.6, 4, 18])
    const wide = { ...own, section: { ...own.section, bottomWidth: 1.4 } }
    const gaps = gapsOfPlan(plan([], [own, near, far]), [testRoom(own, [2, 20])])
    expect(gaps[0]).toMatchObject({ id: 'G1', gap: null, horizontal: null })
    expect(gaps[0]!.note).toContain('sticks out')
    expect(gaps[1]!.gap).toBeLessThan(-2)
    expect(gaps[2]!.gap).toBeNull()
    expect(gaps[2]!.horizontal).toBeGreaterThan(0)
    expect(gapsOfPlan(plan([], [wide]), [testRoom(wide, [2, 20])])[0]!.gap).toBeLessThan(-1)
  })

  it('gives lanes and bracing the gap of their own upper sides, bracing again when a girder of it has moved', () => {
    const own = testGirder('G1', [0, 0, 18], [22.6, 0, 18])
    const lane: Obstacle = {
      id: 'L',
      name: 'lane',
      kind: 'lane',
      path: [
        [0, -3, 9],
        [20, 3, 10],
      ],
      width: 3,
      clearHeight: 5,
    }
    const between: [string, string] = ['G1', 'G3']
    const bracing = { id: 'F', name: 'F', kind: 'cross-frame', between, station: 10, barSize: 0.15 } as const
    const hung = testRoom(own, [2, 20])
    for (const z of [18, 17.2]) {
      const site = plan([lane, bracing], [own, testGirder('G3', [0, 4, z], [22.6, 4, z])])
      const gaps = gapsOfPlan(site, [hung])
      const bars = outsideSurface(crossFrameSolid(site, bracing)!.facets, hung.surface)
      for (const [i, facets] of [laneSolid(lane).facets, bars].entries()) {
        const brute = bruteGap(hung, facets, 300)
        expect(gaps[i]!.gap! - brute).toBeLessThan(1e-9)
        expect(brute - gaps[i]!.gap!).toBeLessThan(0.05)
      }
    }
    const lost = { ...bracing, between: ['G1', 'gone'] as [string, string] }
    expect(gapsOfPlan(plan([lost], [own]), [hung])[0]).toMatchObject({
      gap: null,
      unknown: 'one of the girders that it stands between is missing',
    })
  })

  it('leaves out what lies above the walking surface', () => {
    const roof: Obstacle = { id: 'O', name: 'roof', kind: 'box', center: [10, 0, 25], size: [9, 9, 1] }
    const gap = gapsOfPlan(plan([roof]), [room])[0]!
    expect(gap.gap).toBeNull()
    expect(gap.note).toContain('above')
  })

  it('tells of several lines the worst and the nearest, in whatever order they come', () => {
    const one = testGirder('G1', [0, 0, 18], [22.6, 0, 18])
    const other = testGirder('G2', [0, 10, 17], [22.6, 10, 17])
    const [high, low] = [testRoom(one, [2, 20]), testRoom(other, [3, 19])]
    const under = lowestPoint(low)!.z
    const ground = (id: string, elevation: number, margin = 0): Obstacle => ({
      id,
      name: id,
      kind: 'ground',
      elevation,
      margin,
    })
    const pier = (id: string, y: number): Obstacle => ({
      id,
      name: id,
      kind: 'box',
      center: [10, y, 5],
      size: [2, 2, 4],
    })
    const site = plan(
      [
        ground('A', 6),
        ground('B', under - 0.1, 0.25),
        ground('C', under + 0.5),
        pier('D', -12),
        pier('E', 24),
      ],
      [one, other],
    )
    for (const rooms of [
      [high, low],
      [low, high],
    ]) {
      const [a, b, c, d, e] = gapsOfPlan(site, rooms, new Map(), true)
      expect([a, b, c, d, e].map((g) => g!.line)).toEqual(['L-G2', 'L-G2', 'L-G2', 'L-G1', 'L-G2'])
      expect([a!.gap, b!.gap, c!.gap].map((g) => g!.toFixed(9))).toEqual([
        (under - 6).toFixed(9),
        '-0.150000000',
        '-0.500000000',
      ])
      // Its margin makes a gap negative, not the distance itself 0.
      expect([a!.nearest, b!.nearest, c!.nearest].map((n) => n!.toFixed(9))).toEqual([
        (under - 6).toFixed(9),
        '0.100000000',
        '0.000000000',
      ])
      expect(c!.nearestAt).toEqual({ at: c!.at, line: 'L-G2', station: c!.station, worker: c!.worker })
      for (const [i, room] of [high, low].entries())
        expect([d, e][i]!.horizontal).toBe(gapsOfPlan(site, [room])[3 + i]!.horizontal)
      expect([a!.nearestAt!.line, d!.nearestAt!.line, e!.nearestAt!.line]).toEqual(['L-G2', 'L-G1', 'L-G2'])
    }
  })

  it('does not leave out what lies above the lower end of a sloping girder and below its upper one', () => {
    const sloping = testGirder('G1', [0, 0, 18], [22, 0, 20])
    const long: Obstacle = {
      id: 'O',
      name: 'beam',
      kind: 'box',
      center: [11, 1.2, 18.75],
      size: [21, 0.4, 0.3],
    }
    const gap = gapsOfPlan(plan([long], [sloping]), [testRoom(sloping, [2, 20])])[0]!
    expect(gap.note ?? '').not.toContain('above')
    expect(gap.gap).toBeLessThan(0)
  })
})
