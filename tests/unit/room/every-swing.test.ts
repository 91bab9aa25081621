/** Gaps and distances of small rooms against trying every swing with every facet, without any of the bounds that save work. */
import { describe, expect, it } from 'vitest'
import { facetsOf, levelFacet } from '../../../src/geometry/gaps/facet'
import { beside, footingOf } from '../../../src/geometry/gaps/footing'
import { meshTarget } from '../../../src/geometry/gaps/mesh'
import { nearestToFacet, nearestToFacets, nearestToLevel } from '../../../src/geometry/gaps/nearest'
import { placementOf, toPlan } from '../../../src/geometry/gaps/placed-room'
import { gapToFacets, gapToLevel, planDistance } from '../../../src/geometry/gaps/room-gap'
import { boxesApart, planBox, roomAxis, stretchesOf } from '../../../src/geometry/gaps/stretch'
import { swingDistance } from '../../../src/geometry/gaps/swing-distance'
import { swingGap } from '../../../src/geometry/gaps/swing-gap'
import type { Facet } from '../../../src/geometry/gaps/types'
import { allSlices, lidAt } from '../../../src/geometry/room'
import type { Room, Slice } from '../../../src/geometry/room/types'
import type { MeshObstacle, Vec2, Vec3 } from '../../../src/plan/types'
import { expectClose } from '../../support/close'
import { seeded } from './rooms'
import { smallRoom, triangles } from './small-rooms'

const SEEDS = Array.from({ length: 6 }, (_, i) => 271 + i)
/** The distances of swings agree to this, m. */
const AGREED = 2e-4

const least = (values: (number | undefined)[]): number =>
  Math.min(Number.POSITIVE_INFINITY, ...values.filter((v) => v !== undefined))

const everyGap = (room: Room, facets: Facet[]): number =>
  least(allSlices(room).flatMap((s) => facets.map((f) => swingGap(s, room.side, f, Infinity)?.gap)))

const everyDistance = (room: Room, facets: Facet[]): number =>
  least(allSlices(room).flatMap((s) => facets.map((f) => swingDistance(s, room.side, f, Infinity)?.distance)))

const besideEvery = (room: Room, facets: Facet[]): number =>
  least(
    allSlices(room).flatMap((s) => facets.map((f) => Math.max(0, beside(s, f.points).distance - room.side))),
  )

describe.each(SEEDS)('a small room, seed %i', (seed) => {
  const random = seeded(seed * 7919)
  const room = smallRoom(random)
  const list = triangles(random, 30)
  const facets = list.map((t) => facetsOf(t))

  it('has under it the least gap of any swing and facet, and nearest the nearest', () => {
    for (let i = 0; i < facets.length; i += 3) {
      const some = facets.slice(i, i + 3).flat()
      const gap = everyGap(room, some)
      const found = gapToFacets(room, some)
      if (gap === Infinity) expect(found).toBeNull()
      else expectClose(found!.gap, gap, { abs: 1e-9 }, `gap ${i}`)
      const near = nearestToFacets(room, some)!
      expectClose(near.distance, everyDistance(room, some), { abs: AGREED }, `distance ${i}`)
      const own = allSlices(room).filter((s) => s.station === near.station && s.corner === near.corner)
      const reached = least(
        own.flatMap((s) => some.map((f) => swingDistance(s, room.side, f, Infinity)?.distance)),
      )
      expectClose(reached, near.distance, { abs: AGREED }, 'at the station and corner that are told')
      expectClose(planDistance(room, some)!.distance, besideEvery(room, some), { abs: 1e-9 }, `plan ${i}`)
    }
  })

  it('looks only for what is nearer than what is known, and keeps that else', () => {
    const one = facets[0]!
    const near = nearestToFacets(room, one)!
    expect(nearestToFacets(room, one, { ...near, distance: near.distance - 0.01 })!.distance).toBe(
      near.distance - 0.01,
    )
    const far = { ...near, distance: near.distance + 1, toward: null }
    expectClose(nearestToFacets(room, one, far)!.distance, near.distance, { abs: AGREED })
    for (const facet of one) {
      const found = nearestToFacet(room, facet, null)
      if (!found) continue
      // A direction that is known from elsewhere must not hide what is nearer.
      for (const other of facets.slice(1, 8)) {
        const hint = nearestToFacets(room, other)!
        const again = nearestToFacet(room, facet, { ...hint, distance: found.distance + 0.05 })
        expectClose(again?.distance, found.distance, { abs: AGREED })
      }
      expect(nearestToFacet(room, facet, { ...found, distance: found.distance - 1e-3 })).toBeNull()
    }
  })

  it('tells the place in plan that is nearest, and nothing past a limit', () => {
    const { distanceTo } = footingOf(room)
    for (const [facet] of facets) {
      const { points } = facet!
      const found = distanceTo(points, Infinity)!
      expectClose(found.distance, besideEvery(room, [facet!]), { abs: 1e-9 })
      const at = least(
        allSlices(room)
          .filter((s) => s.station === found.station)
          .map((s) => Math.max(0, beside(s, [found.at]).distance - room.side)),
      )
      expectClose(at, found.distance, { abs: 1e-9 }, 'place')
      expect(distanceTo(points, found.distance)).toBeNull()
      if (found.distance > 0) expect(distanceTo(points, found.distance * 1.01)).toEqual(found)
    }
  })

  it('hangs over a rectangle no lower than the lowest of its swings there', () => {
    const { lowestOver } = footingOf(room)
    for (let i = 0; i < 300; i++) {
      const [x0, y0] = [random() * 16 - 8, random() * 16 - 8]
      const [x1, y1] = [x0 + random() ** 2 * 8, y0 + random() ** 2 * 8]
      const corners: Vec2[] = [
        [x0, y0],
        [x1, y0],
        [x1, y1],
        [x0, y1],
      ]
      const want = everyGap(room, [levelFacet(corners, 0)])
      const got = lowestOver(x0, y0, x1, y1)
      if (want === Infinity) expect(got).toBe(Infinity)
      else expectClose(got, want, { abs: 1e-9 }, `${i}`)
    }
  })

  it('reaches in any direction as far as its farthest swing', () => {
    const { mostIn, stretches } = footingOf(room)
    for (let i = 0; i < 6; i++) {
      const way = random() * 2 * Math.PI
      const tilt = (-random() * Math.PI) / 2
      const n: Vec3 = [Math.cos(way) * Math.cos(tilt), Math.sin(way) * Math.cos(tilt), Math.sin(tilt)]
      for (const stretch of stretches) {
        const want = Math.max(...stretch.slices.flatMap((s) => sampled(s, n))) + room.side * Math.cos(tilt)
        const got = mostIn(n, stretch)
        expectClose(got, want, { abs: 2e-3 }, `${i}`)
        expect(got).toBeGreaterThan(want - 1e-9)
      }
      for (const stretch of stretches) {
        const again = mostIn(n, stretch)
        expect(again).toBe(mostIn(n, stretch))
      }
    }
  })

  it('has the gap and the distance to a level surface of its lowest swing', () => {
    const low = least(allSlices(room).map((s) => s.z - s.radius))
    for (const elevation of [0, 12, 17]) {
      const gap = gapToLevel(room, elevation)!
      expectClose(gap.gap, low - elevation, { abs: 1e-12 })
      const s = allSlices(room).find((each) => each.z - each.radius === low)!
      expect([gap.at, gap.station, gap.corner]).toEqual([[s.x, s.y, elevation], s.station, s.corner])
      expectClose(nearestToLevel(room, elevation)!.distance, Math.max(0, low - elevation), { abs: 1e-12 })
    }
  })

  it('measures a model, wherever it stands and in whatever unit, as its triangles', () => {
    const under = list
      .filter((t) => t.some((p) => p[2] < lidAt(room, p[0], p[1])))
      .flatMap((t) => facetsOf(t))
    const model = Float32Array.from(list.flat(2))
    const plain = target({}, model)
    expectClose(plain.measure(room).point!.gap, everyGap(room, under), { abs: 1e-6 })
    expectClose(plain.nearest(room, null)!.distance, everyDistance(room, under), { abs: AGREED })
    const known = plain.nearest(room, null)!
    const nearer = { ...known, distance: known.distance - 1e-2 }
    expect(plain.nearest(room, nearer)).toBe(nearer)
    // The same triangles brought back by their place, from a model that was drawn elsewhere and larger.
    const change: Partial<MeshObstacle> = { at: [3, -2, 1], turn: 50, scale: 0.25 }
    const p = placementOf({ ...MODEL, ...change })
    const back = ([x, y, z]: Vec3): Vec3 => {
      const [dx, dy] = [(x - p.at[0]) / p.scale, (y - p.at[1]) / p.scale]
      return [p.cos * dx + p.sin * dy, p.cos * dy - p.sin * dx, (z - p.at[2]) / p.scale]
    }
    const drawn = list.map((t) => t.map(back))
    for (const [i, t] of drawn.entries())
      for (const [k, q] of t.entries())
        for (const [j, v] of toPlan(p, q).entries()) expectClose(v, list[i]![k]![j]!, { abs: 1e-12 })
    for (const up of ['z', 'y'] as const) {
      const stored = up === 'z' ? drawn : drawn.map((t) => t.map(([x, y, z]): Vec3 => [x, z, -y]))
      const placed = target({ ...change, upAxis: up }, Float32Array.from(stored.flat(2)))
      const point = placed.measure(room).point!
      expectClose(point.gap, everyGap(room, under), { abs: 1e-4 }, up)
      // A millimetre around the place that is told, for it may lie on the rim of the room.
      const [x, y, z] = point.at
      const around: Vec2[] = [
        [x - 1e-3, y - 1e-3],
        [x + 1e-3, y - 1e-3],
        [x + 1e-3, y + 1e-3],
        [x - 1e-3, y + 1e-3],
      ]
      expectClose(everyGap(room, [levelFacet(around, z)]), point.gap, { abs: 0.05 }, 'place')
      expectClose(placed.nearest(room, null)!.distance, everyDistance(room, under), { abs: 4 * AGREED }, up)
      expectClose(placed.nearest(room, { ...known, distance: 99 })!.distance, known.distance, {
        abs: 4 * AGREED,
      })
      expect(placed.nearest(room, nearer)).toBe(nearer)
    }
  })

  it('tells how far beside it a model stands that it shares no area with, 0 and why where all is above', () => {
    const away = list.map((t) => t.map((q): Vec3 => [q[0] + 20, q[1] - 13, q[2]]))
    const flat = away.map((t): Facet => facetsOf(t)[0]!)
    const got = target({}, Float32Array.from(away.flat(2))).measure(room)
    expect([got.point, got.note]).toEqual([null, undefined])
    const want = least(
      allSlices(room).flatMap((s) =>
        away.map((t) =>
          Math.max(
            0,
            beside(
              s,
              t.map((q): Vec2 => [q[0], q[1]]),
            ).distance - room.side,
          ),
        ),
      ),
    )
    expectClose(got.beside!.distance, want, { abs: 1e-6 })
    expect(flat.length).toBe(30)
    const high = list.map((t) => t.map((q): Vec3 => [q[0], q[1], q[2] + 15]))
    const over = target({}, Float32Array.from(high.flat(2)))
    expect(over.measure(room)).toMatchObject({ point: null, beside: null })
    expect(over.measure(room).note).toMatch(/above/)
    expect(over.nearest(room, null)).toBeNull()
  })
})

const MODEL: MeshObstacle = { id: 'M', name: 'm', kind: 'mesh', file: 'm.stl' }

function target(change: Partial<MeshObstacle>, model: Float32Array) {
  const made = meshTarget({ ...MODEL, ...change }, { ok: true, value: { triangles: model } })
  if (!made.ok) throw new Error(made.why)
  return made
}

/** n.P at places of one swing. */
function sampled(s: Slice, n: Vec3): number[] {
  return Array.from({ length: 401 }, (_, i) => {
    const t = (s.reach * (i - 200)) / 200
    return n[0] * (s.x + t * s.dx) + n[1] * (s.y + t * s.dy) + n[2] * (s.z - Math.sqrt(s.radius ** 2 - t * t))
  })
}

it('looks at few of the swings of a long room: those near what is asked for', () => {
  const room = smallRoom(seeded(5), 120)
  const footing = footingOf(room)
  let looked = 0
  for (const s of allSlices(room)) {
    const { x } = s
    Object.defineProperty(s, 'x', {
      get: () => {
        looked++
        return x
      },
    })
  }
  const all = allSlices(room).length
  const [ax, ay] = roomAxis(room)
  const cost = (ask: () => unknown): number => {
    looked = 0
    ask()
    return looked / all
  }
  // Past either end of the line, and beside its middle on either side: swings that are looked at, of all.
  // Each swing is read up to three times; the figures are what this room takes today, and a little more.
  for (const [u, v, plan, space, next] of [
    [-9, 0.5, 0.03, 0.17, 0.17],
    [9, 0.5, 0.03, 0.17, 0.02],
    [0, 6, 0.06, 2.2, 1.62],
    [0, -6, 0.06, 1.9, 0.58],
  ] as const) {
    const [x, y] = [u * ax - v * ay, u * ay + v * ax]
    const facet = levelFacet(
      [
        [x, y],
        [x + 0.2, y],
        [x, y + 0.2],
      ],
      11,
    )
    const what = `at ${u}, ${v}`
    // What is known of a place makes the next one beside it cheaper.
    const near = nearestToFacets(room, [facet])
    const beyond = levelFacet(
      [
        [x + 0.3, y],
        [x + 0.5, y],
        [x + 0.3, y + 0.2],
      ],
      10.9,
    )
    expect(
      cost(() => nearestToFacets(room, [beyond], near)),
      what,
    ).toBeLessThan(next)
    expect(
      cost(() => footing.distanceTo(facet.points, Infinity)),
      what,
    ).toBeLessThan(plan)
    expect(
      cost(() => nearestToFacets(room, [facet])),
      what,
    ).toBeLessThan(space)
    expect(
      cost(() => gapToFacets(room, [facet])),
      what,
    ).toBeLessThan(0.02)
    expect(
      cost(() => footing.lowestOver(x, y, x + 0.2, y + 0.2)),
      what,
    ).toBeLessThan(0.02)
  }
  expect(cost(() => footing.lowestOver(-9, -9, 9, 9))).toBeLessThan(0.1)
})

describe('stretches', () => {
  it('take up every swing once, near in station and direction, bounded by what is told of them', () => {
    for (const seed of SEEDS) {
      const room = smallRoom(seeded(seed * 7919), 60)
      const stretches = stretchesOf(room)
      const all = stretches.flatMap((s) => s.slices)
      expect(all.length).toBe(allSlices(room).length)
      expect(new Set(all)).toEqual(new Set(allSlices(room)))
      const [ax, ay] = roomAxis(room)
      expectClose(Math.hypot(ax, ay), 1, { rel: 1e-12 })
      expectClose(ax * room.frame.left[0] + ay * room.frame.left[1], 0, { abs: 1e-12 })
      for (const { low, slices, along, rim, widest, slack, box } of stretches) {
        expect(low).toBe(least(slices.map((s) => s.z - s.radius)))
        for (let i = 1; i < slices.length; i++) {
          expect(slices[i]!.z - slices[i]!.radius).toBeGreaterThanOrEqual(
            slices[i - 1]!.z - slices[i - 1]!.radius,
          )
        }
        const own = new Set(slices)
        expect(along).toEqual(allSlices(room).filter((s) => own.has(s)))
        expect(widest.reach).toBe(Math.max(...slices.map((s) => s.reach)))
        const ends = slices.flatMap((s) =>
          [1, -1].map((way): Vec2 => [s.x + way * s.dx * s.reach, s.y + way * s.dy * s.reach]),
        )
        for (const end of ends) expect(beside(widest, [end]).distance).toBeLessThanOrEqual(slack + 1e-9)
        expect(slack).toBeLessThan(1.3)
        const [u, v] = [ends.map(([x, y]) => x * ax + y * ay), ends.map(([x, y]) => y * ax - x * ay)]
        expectClose(box.u0, Math.min(...u), { abs: 1e-9 })
        expectClose(box.u1, Math.max(...u), { abs: 1e-9 })
        expectClose(box.v0, Math.min(...v), { abs: 1e-9 })
        expectClose(box.v1, Math.max(...v), { abs: 1e-9 })
        const stations = slices.map((s) => s.station)
        expect(Math.max(...stations) - Math.min(...stations)).toBeLessThan(0.2)
        for (const s of slices) {
          expect(s.dx * widest.dx + s.dy * widest.dy).toBeGreaterThan(Math.cos(0.11))
          const alike = rim.filter(
            (r) => r.station === s.station && Math.hypot(r.dx - s.dx, r.dy - s.dy) < 1e-6,
          )
          expect([alike.length, alike[0]!.reach >= s.reach]).toEqual([1, true])
        }
      }
    }
  })

  it('know how far apart two bounds are', () => {
    const a = planBox(
      [
        [0, 0],
        [2, 1],
      ],
      1,
      0,
    )
    expect(a).toEqual({ u0: 0, u1: 2, v0: 0, v1: 1 })
    expect(
      planBox(
        [
          [0, 0],
          [2, 1],
        ],
        0,
        1,
      ),
    ).toEqual({ u0: 0, u1: 1, v0: -2, v1: 0 })
    for (const [x, y, apart] of [
      [5, 0.5, 3],
      [-4, 0.5, 4],
      [1, 3, 2],
      [1, -6, 6],
      [5, 5, 5],
      [-3, -4, 5],
      [1, 0.5, 0],
    ] as const) {
      const b = planBox([[x, y]], 1, 0)
      expectClose(boxesApart(a, b), apart, { abs: 1e-12 })
      expectClose(boxesApart(b, a), apart, { abs: 1e-12 })
    }
  })
})
