/** Boxes, lanes, bracing and girders as solids: their upper sides against plain solids cut by upright lines, and places by hand. */
import { describe, expect, it } from 'vitest'
import { expectClose } from '../../../tests/support/close'
import { seeded } from '../../../tests/support/random'
import { sample } from '../../../tests/support/sample'
import type {
  BoxObstacle,
  CrossFrameObstacle,
  Girder,
  LaneObstacle,
  Plan,
  Vec2,
  Vec3,
} from '../../plan/types'
import { dot, length, scale, sub } from '../vec'
import { planeAt } from './facet'
import { type Bar, crossFrameBars, crossFrameSolid, girderSolid } from './girder-solid'
import { boxSolid, laneSolid, type Solid } from './solid'

/** How high a solid's upper side is over a point in plan; null beside it. */
function upperAt({ facets }: Solid, [x, y]: Vec2): number | null {
  const over = facets.filter(({ points }) =>
    points.every(([ax, ay], i) => {
      const [bx, by] = points[(i + 1) % points.length]!
      return (bx - ax) * (y - ay) - (by - ay) * (x - ax) >= -1e-12
    }),
  )
  const high = over.filter((f) => f.points.length > 2).map((f) => planeAt(f.plane, x, y))
  return high.length > 0 ? Math.max(...high) : null
}

const girder = (id: string, start: Vec3, end: Vec3, depth: number): Girder => ({
  id,
  name: id,
  start,
  end,
  material: 'steel',
  section: {
    topWidth: 0.4,
    topThickness: 0.03,
    webThickness: 0.02,
    bottomWidth: 0.5,
    bottomThickness: 0.04,
    depth,
  },
  loops: [],
})

describe('a girder', () => {
  const solid = girderSolid(girder('G', [0, 0, 10], [20, 0, 12], 1.5))
  it('has the top of both its flanges, along its slope', () => {
    expect(solid.facets).toHaveLength(2)
    // On the top; on the bottom flange where it is wider than the top one.
    for (const [x, y, z] of [
      [5, 0.1, 10.5],
      [15, -0.19, 11.5],
      [5, 0.24, 10.5 - 1.46],
      [15, -0.24, 11.5 - 1.46],
    ] as const)
      expectClose(upperAt(solid, [x, y])!, z, { abs: 1e-9 }, `at ${x}, ${y}`)
    for (const beside of [
      [5, 0.26],
      [-0.1, 0],
      [20.1, 0],
    ] as Vec2[])
      expect(upperAt(solid, beside)).toBeNull()
  })
  it('is nowhere lower than under its lower end', () => expectClose(solid.bottom, 8.5, { abs: 1e-12 }))
})

describe('bracing', () => {
  const frame = { id: 'F', name: 'F', kind: 'cross-frame', station: 8, barSize: 0.1 } as const
  const between = (a: Girder, b: Girder) => {
    const plan: Plan = { ...sample('thin-margins'), girders: [a, b] }
    const obstacle: CrossFrameObstacle = { ...frame, margin: 0, between: [a.id, b.id] }
    return { plan, obstacle }
  }
  it.each([
    ['east', (x: number, y: number): Vec2 => [x, y]],
    ['north', (x: number, y: number): Vec2 => [-y, x]],
  ])('runs from web to web, clear of the flanges, of girders to the %s and back', (_, turned) => {
    const a = girder('A', [...turned(0, 0), 10], [...turned(20, 0), 10], 1.5)
    const b = girder('B', [...turned(20, 3), 10.4], [...turned(0, 3), 10.4], 1.2)
    const { plan, obstacle } = between(a, b)
    // Tops: under the top flange by half a bar; bottoms: over the bottom flange by half a bar.
    const [near, other] = [turned(8, 0.01), turned(8, 2.99)]
    const wanted = [
      [...near, 9.92, ...other, 9.29],
      [...other, 10.32, ...near, 8.59],
      [...near, 8.59, ...other, 9.29],
    ].flat()
    const bars = crossFrameBars(plan, obstacle)!
    for (const [i, v] of bars.flatMap((b) => [...b.from, ...b.to]).entries())
      expectClose(v, wanted[i]!, { abs: 1e-9 }, `figure ${i}`)
    expect(bars.map((b) => b.size)).toEqual([0.1, 0.1, 0.1])
    expectClose(crossFrameSolid(plan, obstacle)!.bottom, 8.59 - 0.1, { abs: 1e-9 })
    expect(crossFrameBars(plan, { ...obstacle, between: ['A', 'gone'] })).toBeNull()
    expect(crossFrameSolid(plan, { ...obstacle, between: ['gone', 'B'] })).toBeNull()
  })

  it.each([1, 2, 3, 4, 5, 6])('has the upper side of its bars, seed %i', (seed) => {
    const random = seeded(seed * 104729)
    const at = (x: number, y: number): Vec3 => [x + random.between(-1, 1), y, random.between(9, 11)]
    const a = girder('A', at(0, 0), at(20, 1), random.between(1, 2))
    const b = girder('B', at(0, 3), at(20, 4), random.between(1, 2))
    const { plan, obstacle } = between(a, b)
    const [bars, solid] = [crossFrameBars(plan, obstacle)!, crossFrameSolid(plan, obstacle)!]
    let met = 0
    for (let i = 0; i < 400; i++) {
      // Past its ends too: the upper end is seen from above.
      const along = random.between(-0.06, 1.06)
      const bar = bars[i % 3]!
      const off = random.between(-0.12, 0.12)
      const point: Vec2 = [
        bar.from[0] + (bar.to[0] - bar.from[0]) * along + off,
        bar.from[1] + (bar.to[1] - bar.from[1]) * along,
      ]
      const highest = bars.map((one) => barAt(one, point)).filter((z) => z !== null)
      // At the very rim of a bar either answer is right.
      if (highest.length === 0 ? bars.some((one) => barAt(one, point, 1e-6) !== null) : rim(bars, point))
        continue
      const found = upperAt(solid, point)
      if (highest.length === 0) expect(found, `seed ${seed}, ${point}`).toBeNull()
      else expectClose(found ?? Number.NaN, Math.max(...highest), { abs: 1e-8 }, `seed ${seed}, ${point}`)
      if (highest.length > 0) met++
    }
    expect(met).toBeGreaterThan(100)
  })
})

const rim = (bars: Bar[], point: Vec2): boolean =>
  bars.some((one) => (barAt(one, point) === null) !== (barAt(one, point, -1e-6) === null))

/** The highest point of a square bar on an upright line: where the line is within all three pairs of sides. */
function barAt(bar: Bar, [x, y]: Vec2, wider = 0): number | null {
  const run = sub(bar.to, bar.from)
  const along = scale(run, 1 / length(run))
  const level: Vec3 = scale([along[1], -along[0], 0], 1 / Math.hypot(along[0], along[1]))
  const upright: Vec3 = [
    level[1] * along[2] - level[2] * along[1],
    level[2] * along[0] - level[0] * along[2],
    level[0] * along[1] - level[1] * along[0],
  ]
  const middle = scale([bar.from[0] + bar.to[0], bar.from[1] + bar.to[1], bar.from[2] + bar.to[2]], 1 / 2)
  let [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  for (const [axis, half] of [
    [along, length(run) / 2],
    [level, bar.size / 2],
    [upright, bar.size / 2],
  ] as const) {
    // |c + axis_z z| <= half, where c is what does not change on the line.
    const c = dot(axis, [x, y, 0]) - dot(axis, middle)
    if (Math.abs(axis[2]) < 1e-15) {
      if (Math.abs(c) > half + wider) return null
      continue
    }
    const ends = [(-half - wider - c) / axis[2], (half + wider - c) / axis[2]] as const
    low = Math.max(low, Math.min(...ends))
    high = Math.min(high, Math.max(...ends))
  }
  return low <= high ? high : null
}

describe('a box', () => {
  it.each([1, 2, 3, 4])('stands as wide and turned as it is told, wherever it goes, seed %i', (seed) => {
    const random = seeded(seed * 6151)
    const place = (): Vec3 => [random.between(-5, 5), random.between(-5, 5), random.between(0, 2)]
    const box: BoxObstacle = {
      id: 'B',
      name: 'B',
      kind: 'box',
      margin: 0,
      center: place(),
      size: [random.between(1, 4), random.between(1, 4), random.between(1, 3)],
      turn: random.between(-180, 180),
      travel: Array.from({ length: seed - 1 }, place),
    }
    const solid = boxSolid(box)
    const places = [box.center, ...(box.travel ?? [])]
    expectClose(solid.bottom, Math.min(...places.map((p) => p[2])) - box.size[2] / 2, { abs: 1e-12 })
    for (let i = 0; i < 300; i++) {
      const point: Vec2 = [random.between(-8, 8), random.between(-8, 8)]
      const [least, most] = boxAt(box, places, point)
      const found = upperAt(solid, point) ?? Number.NEGATIVE_INFINITY
      expect(found, `seed ${seed}, ${point}`).toBeGreaterThanOrEqual(least - 1e-9)
      expect(found, `seed ${seed}, ${point}`).toBeLessThanOrEqual(most + 1e-9)
    }
  })
})

/** Steps in which a moving box is tried. */
const TRIED = 300

/** Least and greatest height that a box may reach over a point, from trying it at many places of its way. */
function boxAt(box: BoxObstacle, places: Vec3[], point: Vec2): [number, number] {
  let [least, most] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY]
  const offer = (centre: Vec3, wider: number, rise: number): void => {
    const turn = (-(box.turn ?? 0) * Math.PI) / 180
    const [x, y] = [point[0] - centre[0], point[1] - centre[1]]
    const [u, v] = [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)]
    const beside = Math.max(Math.abs(u) - box.size[0] / 2, Math.abs(v) - box.size[1] / 2)
    const top = centre[2] + box.size[2] / 2
    if (beside <= 0) least = Math.max(least, top)
    if (beside <= wider) most = Math.max(most, top + rise)
  }
  offer(places[0]!, 0, 0)
  places.slice(1).forEach((to, i) => {
    const way = sub(to, places[i]!)
    for (let k = 0; k <= TRIED; k++) {
      const at = scale(way, k / TRIED)
      const from = places[i]!
      const centre: Vec3 = [from[0] + at[0], from[1] + at[1], from[2] + at[2]]
      offer(centre, length(way) / TRIED, Math.abs(way[2]) / TRIED)
    }
  })
  return [least, most]
}

describe('a lane', () => {
  it.each([1, 2, 3, 4, 5, 6])(
    'is as high over its path as it is clear, as wide, and round at bends, seed %i',
    (seed) => {
      const random = seeded(seed * 7907)
      const count = 2 + (seed % 3)
      const path = Array.from(
        { length: count },
        (_, i): Vec3 => [i * 10, random.between(-6, 6), random.between(0, 2)],
      )
      const lane: LaneObstacle = {
        id: 'L',
        name: 'L',
        kind: 'lane',
        margin: 0,
        path,
        width: 3.5,
        clearHeight: 4.4,
      }
      const solid = laneSolid(lane)
      expectClose(solid.bottom, Math.min(...path.map((p) => p[2])), { abs: 1e-12 })
      for (let i = 0; i < 400; i++) {
        const point: Vec2 = [random.between(-4, count * 10 - 6), random.between(-9, 9)]
        const [least, most] = laneAt(lane, point)
        const found = upperAt(solid, point) ?? Number.NEGATIVE_INFINITY
        expect(found, `seed ${seed}, ${point}`).toBeGreaterThanOrEqual(least - 1e-9)
        expect(found, `seed ${seed}, ${point}`).toBeLessThanOrEqual(most + 1e-9)
      }
    },
  )
  it('leaves out a stretch without length', () => {
    const lane: LaneObstacle = {
      id: 'L',
      name: 'L',
      kind: 'lane',
      margin: 0,
      width: 3,
      clearHeight: 4,
      path: [
        [0, 0, 0],
        [10, 0, 1],
        [10, 0, 1],
      ],
    }
    const { facets } = laneSolid(lane)
    expect(facets.every((f) => Number.isFinite(f.top))).toBe(true)
    expectClose(upperAt(laneSolid(lane), [5, 1])!, 4.5, { abs: 1e-9 })
  })
})

/** Least and greatest height that a lane may have over a point: a bend's circle must be held, the figure round it may be. */
function laneAt({ path, width, clearHeight }: LaneObstacle, [x, y]: Vec2): [number, number] {
  let [least, most] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY]
  const offer = (z: number, surely: boolean): void => {
    if (surely) least = Math.max(least, z + clearHeight)
    most = Math.max(most, z + clearHeight)
  }
  path.slice(1).forEach((b, i) => {
    const a = path[i]!
    const run = Math.hypot(b[0] - a[0], b[1] - a[1])
    const t = ((x - a[0]) * (b[0] - a[0]) + (y - a[1]) * (b[1] - a[1])) / run
    const aside = Math.abs((x - a[0]) * (b[1] - a[1]) - (y - a[1]) * (b[0] - a[0])) / run
    if (t >= 0 && t <= run && aside <= width / 2) offer(a[2] + ((b[2] - a[2]) * t) / run, true)
  })
  for (const p of path.slice(1, -1)) {
    const away = Math.hypot(x - p[0], y - p[1])
    if (away <= width / 2 / Math.cos(Math.PI / 8)) offer(p[2], away <= width / 2)
  }
  return [least, most]
}
