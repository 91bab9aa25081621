/** The swings of a line, each by hand from the statics at its station; the underside and size of rooms by plain sums. */
import { describe, expect, it } from 'vitest'
import { topPoint } from '../../../src/geometry/girder'
import { allSlices, lidAt, lowestPoint, underside } from '../../../src/geometry/room'
import { excessAt, offsetAt, stretchesOf } from '../../../src/geometry/room/profile'
import { roomSizes } from '../../../src/geometry/room/size'
import { standingReach } from '../../../src/geometry/room/surface'
import { connectorReach, feetReach, swingOf } from '../../../src/geometry/room/swing'
import type { Room, RoomInput, Slice } from '../../../src/geometry/room/types'
import type { Vec2 } from '../../../src/plan/types'
import { expectClose } from '../../support/close'
import { seeded, testGirder, testInput, testRoom } from './rooms'
import { smallRoom } from './small-rooms'

const girder = testGirder('G1', [3, -2, 18], [11, 4, 18.9])
const POSTS = [1.5, 4.2, 6.1]
const change: Partial<RoomInput> = {
  stanchions: POSTS.map((station, i) => ({ station, offset: [0.3, -0.1, 0.2][i]! })),
  excess: [{ from: 1.5, to: 4.2, excess: 0.2 }],
  side: 0.6,
}
const input = testInput(girder, POSTS, change)
const room = testRoom(girder, POSTS, change)
const left: Vec2 = [input.frame.left[0], input.frame.left[1]]
const right: Vec2 = [-left[0], -left[1]]

/** A swing as it stands at a station before it is widened for its neighbours. */
function plain(corner: number, station: number, from: number, to: number, way: Vec2 | null): Slice {
  const worker = input.workers.find((w) => w.id === input.corners[corner]!.worker)!
  const stretch = stretchesOf(input, corner).find((s) => s.from === from && s.to === to)!
  const sample = stretch.at(station)
  const top = topPoint(input.frame, station, offsetAt(input, station))
  const edge = (at: number, direction: Vec2): number => {
    const p = topPoint(input.frame, at, offsetAt(input, at))
    return standingReach(input.surface, [p[0], p[1]], direction)
  }
  // Square to the girder: the farthest that one can stand within half a step, to either side.
  const reach = way
    ? edge(station, way)
    : Math.max(...[-0.05, 0, 0.05].flatMap((d) => [edge(station + d, left), edge(station + d, right)]))
  const swing = swingOf(worker, sample)
  return {
    x: top[0],
    y: top[1],
    z: top[2] + sample.height - sample.drop - input.marginBelow - excessAt(input, station),
    dx: (way ?? left)[0],
    dy: (way ?? left)[1],
    radius: swing.feet,
    reach: feetReach(swing, Math.min(reach, connectorReach(worker, sample.height))),
    station,
    corner,
  }
}

function expectSlice(got: Slice, want: Slice, what: string): void {
  for (const key of ['x', 'y', 'z', 'dx', 'dy', 'radius', 'reach', 'station', 'corner'] as const)
    expectClose(got[key], want[key], { abs: 1e-9 }, `${what}: ${key}`)
}

const bottom = (s: Slice): number => s.z - s.radius

describe('swings square to the girder', () => {
  it.each(input.corners.map((_, i) => i))(
    'of corner %i stand close, as low and wide as between neighbours',
    (corner) => {
      for (const [from, to] of [
        [1.5, 4.2],
        [4.2, 6.1],
      ] as const) {
        const own = room.slices.filter((s) => s.corner === corner)
        // Both spans have one at the stanchion between: the last of the one, the first of the other.
        const inside = own.filter((s) => s.station > from && s.station < to)
        const stations = [from, ...inside.map((s) => s.station), to]
        const swings = stations.map((station) => plain(corner, station, from, to, null))
        for (let i = 0; i < inside.length; i++) {
          const [a, s, b] = [swings[i]!, swings[i + 1]!, swings[i + 2]!]
          const z = s.z - Math.max(0, bottom(s) - bottom(a), bottom(s) - bottom(b)) / 2
          const reach = Math.max(s.reach, (s.reach + a.reach) / 2, (s.reach + b.reach) / 2)
          expectSlice(inside[i]!, { ...s, z, reach }, `${i}`)
        }
        const ends = [
          [from, swings[0]!, swings[1]!],
          [to, swings[swings.length - 1]!, swings[swings.length - 2]!],
        ] as const
        for (const [station, s, next] of ends) {
          const want = {
            ...s,
            z: s.z - Math.max(0, bottom(s) - bottom(next)) / 2,
            reach: Math.max(s.reach, (s.reach + next.reach) / 2),
          }
          const got = own.filter((o) => Math.abs(o.station - station) < 1e-9)
          expect(got.length).toBe(station === 4.2 ? 2 : 1)
          const near = got.reduce((a, b) => (Math.abs(a.z - want.z) < Math.abs(b.z - want.z) ? a : b))
          expectSlice(near, want, `at ${station}`)
        }
        for (let i = 1; i < swings.length; i++) {
          const step = stations[i]! - stations[i - 1]!
          const rise = Math.abs(bottom(swings[i]!) - bottom(swings[i - 1]!))
          expect(step).toBeLessThanOrEqual(0.1 + 1e-9)
          expect(step).toBeGreaterThan(0.005)
          expect(rise <= 0.006 + 1e-12 || step <= 0.01 + 1e-12, `${stations[i]}: ${step}, ${rise}`).toBe(true)
        }
        // And no more of them than that asks for.
        const rises = swings.reduce(
          (sum, s, i) => sum + (i > 0 ? Math.abs(bottom(s) - bottom(swings[i - 1]!)) : 0),
          0,
        )
        const least = Math.ceil((to - from) / 0.1)
        expect(stations.length).toBeGreaterThanOrEqual(least + 1)
        expect(stations.length).toBeLessThan(least + (2 * rises) / 0.006)
      }
    },
  )

  it('come by station, on a body as wide as it must be between two of them, a tenth of a metre at least', () => {
    for (let i = 1; i < room.slices.length; i++)
      expect(room.slices[i]!.station).toBeGreaterThanOrEqual(room.slices[i - 1]!.station)
    expectClose(room.side, Math.hypot(0.6, 0.05), { rel: 1e-12 })
    expectClose(testRoom(girder, POSTS, { side: 0.02 }).side, Math.hypot(0.1, 0.05), { rel: 1e-12 })
  })

  it('lie under the plane of the girder, carried on past its ends', () => {
    for (const station of [-3, 0, 4, 10, 14])
      for (const offset of [-5, 0, 2]) {
        const [x, y, z] = topPoint(input.frame, station, offset)
        expectClose(lidAt(room, x, y), z, { abs: 1e-9 }, `${station}, ${offset}`)
      }
    expect([room.line, room.girder, room.unknown]).toEqual(['L-G1', 'G1', null])
  })
})

describe('swings past the ends', () => {
  it('go from either end stanchion in every direction outwards in which one can stand', () => {
    expect(room.ends.length).toBe(2 * input.corners.length)
    for (const [i, f] of room.ends.entries()) {
      const corner = Math.floor(i / 2)
      const way = i % 2 === 0 ? -1 : 1
      const station = way < 0 ? 1.5 : 6.1
      const [from, to] = way < 0 ? [1.5, 4.2] : [4.2, 6.1]
      const out = [
        (way * input.frame.along[0]) / input.frame.planRate,
        (way * input.frame.along[1]) / input.frame.planRate,
      ]
      const worker = input.workers.find((w) => w.id === input.corners[corner]!.worker)!
      const sample = stretchesOf(input, corner)
        .find((s) => s.from === from)!
        .at(station)
      const swing = swingOf(worker, sample)
      const widest = feetReach(swing, Math.min(connectorReach(worker, sample.height), swing.dRing))
      const parts = Math.max(8, Math.ceil((Math.PI * widest) / 0.1))
      const all = Array.from({ length: parts - 1 }, (_, k) => {
        const angle = (Math.PI * (k + 1)) / parts - Math.PI / 2
        const [c, s] = [Math.cos(angle), Math.sin(angle)]
        return plain(corner, station, from!, to!, [out[0]! * c - out[1]! * s, out[1]! * c + out[0]! * s])
      }).filter((s) => s.reach > 0)
      expect(f.slices.length).toBe(all.length)
      for (const [k, s] of all.entries()) expectSlice(f.slices[k]!, s, `fan ${i}, ${k}`)
      expectClose(f.reach, Math.max(...all.map((s) => s.reach)), { abs: 1e-12 })
      const top = topPoint(input.frame, station, way < 0 ? 0.3 : 0.2)
      expectClose(f.x, top[0], { abs: 1e-12 })
      expectClose(f.y, top[1], { abs: 1e-12 })
    }
  })
})

/** Lowest that any disc of any swing reaches over a place: the feet nearest to the bottom whose disc covers it. */
function everyUnderside({ side, ...r }: Room, x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY
  for (const s of allSlices({ side, ...r })) {
    const [px, py] = [x - s.x, y - s.y]
    const across = py * s.dx - px * s.dy
    if (Math.abs(across) > side) continue
    const half = Math.sqrt(side * side - across * across)
    const [low, high] = [
      Math.max(-s.reach, px * s.dx + py * s.dy - half),
      Math.min(s.reach, px * s.dx + py * s.dy + half),
    ]
    if (low > high) continue
    const t = low > 0 ? low : Math.min(high, 0)
    least = Math.min(least, s.z - Math.sqrt(s.radius * s.radius - t * t))
  }
  return least
}

const SEEDS = [31, 32]

describe.each(SEEDS)('a small room, seed %i', (seed) => {
  const random = seeded(seed * 7919)
  const small = smallRoom(random, seed % 2 === 0 ? 60 : 9)

  it('has the underside of its lowest swing at every place', () => {
    let met = 0
    for (let i = 0; i < 1500; i++) {
      const [x, y] = [random() * 20 - 10, random() * 20 - 10]
      const want = everyUnderside(small, x, y)
      const got = underside(small, x, y)
      if (want === Infinity) {
        expect(got).toBeNull()
        continue
      }
      met++
      expectClose(got!.z, want, { abs: 1e-9 }, `${i}`)
      expectClose(
        everyUnderside({ ...small, slices: [got!.slice], ends: [] }, x, y),
        want,
        { abs: 1e-9 },
        'its swing',
      )
    }
    expect(met).toBeGreaterThan(100)
    const low = allSlices(small).reduce((a, b) => (bottom(b) < bottom(a) ? b : a))
    expect(lowestPoint(small)).toEqual({ z: bottom(low), slice: low })
    // Each swing by itself, as the only one there is: under its middle.
    for (const only of small.slices) {
      const alone: Room = { ...small, slices: [only], ends: [] }
      expect(underside(alone, only.x, only.y)).toEqual({ z: bottom(only), slice: only })
    }
  })
})

it('a small room and another have volume, footprint and lowest point, alone and together, that a finer grid gives', () => {
  const random = seeded(31 * 7919)
  const small = smallRoom(random, 9)
  const other = smallRoom(random, 9)
  const sunk: Room = { ...other, lid: { ...other.lid, z0: other.lid.z0 - 2 } }
  const rooms = [small, sunk]
  const STEP = 0.13
  const sums = [0, 0, 0]
  const areas = [0, 0, 0]
  for (let x = -11.013; x < 11; x += STEP)
    for (let y = -11.017; y < 11; y += STEP) {
      const parts = rooms.map((r) => [everyUnderside(r, x, y), lidAt(r, x, y)] as const)
      const there = parts.filter(([z, lid]) => z < lid)
      for (const [i, [z, lid]] of parts.entries()) {
        if (z >= lid) continue
        sums[i]! += lid - z
        areas[i]!++
      }
      if (there.length === 0) continue
      areas[2]!++
      sums[2]! += there.reduce((sum, [z, lid]) => sum + lid - z, 0)
      if (there.length < 2) continue
      const [a, b] = there as [readonly [number, number], readonly [number, number]]
      sums[2]! -= Math.max(0, Math.min(a[1], b[1]) - Math.max(a[0], b[0]))
    }
  const { each, union } = roomSizes(rooms)
  for (const [i, size] of [...each, union].entries()) {
    expectClose(size.volume, sums[i]! * STEP ** 2, { rel: 0.015 }, `volume ${i}`)
    expectClose(size.footprint, areas[i]! * STEP ** 2, { rel: 0.015 }, `footprint ${i}`)
  }
  const lows = rooms.map((r) => lowestPoint(r)!)
  for (const [i, l] of lows.entries()) expect(each[i]!.lowest).toEqual([l.slice.x, l.slice.y, l.z])
  expect(union.lowest![2]).toBe(Math.min(...lows.map((l) => l.z)))
  expect(roomSizes([...rooms].reverse()).union.lowest).toEqual(union.lowest)
  expect(roomSizes(rooms)).toEqual({ each, union })
})

it('no room has no size', () => {
  const empty: Room = { ...smallRoom(seeded(3)), slices: [], ends: [] }
  expect(roomSizes([empty])).toEqual({
    each: [{ volume: 0, footprint: 0, lowest: null }],
    union: { volume: 0, footprint: 0, lowest: null },
  })
  expect([lowestPoint(empty), underside(empty, 0, 0)]).toEqual([null, null])
})
