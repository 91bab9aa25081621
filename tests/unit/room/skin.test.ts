import { describe, expect, it } from 'vitest'
import {
  lidAt,
  type Room,
  SKIN_TOLERANCE,
  type Skin,
  skinOf,
  underside,
  walkingSurface,
} from '../../../src/geometry/room'
import type { Plan } from '../../../src/plan/types'
import { seeded, testGirder, testInput, testRoom } from './rooms'

const posts = [2.15, 11.25, 20.35]
const turned = testGirder('G1', [3, -2, 18], [24.6, 4, 18.6])
const decks: Plan['decks'] = [
  {
    id: 'D1',
    name: 'forms',
    elevation: 18.2,
    outline: [
      [8, 0.1],
      [14, 1.8],
      [13.4, 3.6],
      [7.4, 2],
    ],
  },
  {
    id: 'D2',
    name: 'landing',
    elevation: 18.6,
    outline: [
      [24.5, 3.4],
      [26, 3.9],
      [25.6, 5.2],
      [24.1, 4.6],
    ],
  },
]
const withDecks = walkingSurface({ girders: [turned], decks } as unknown as Plan, turned)

const rooms: [string, Room][] = [
  ['two workers on a sloping, turned girder', testRoom(turned, posts)],
  ['a thin body', testRoom(turned, posts, { side: 0.12 })],
  ['decks beside and past the end', testRoom(turned, posts, { surface: withDecks })],
  ['excess in one span', testRoom(turned, posts, { excess: [{ from: 2.15, to: 11.25, excess: 0.4 }] })],
  [
    'much more depth in one span, one worker',
    testRoom(turned, posts, {
      excess: [
        { from: 2.15, to: 11.25, excess: 0.02 },
        { from: 11.25, to: 20.35, excess: 0.6 },
      ],
      corners: testInput(turned, posts).corners.slice(0, 4),
    }),
  ],
  ['a line at the girder’s very end', testRoom(turned, [0, 9])],
  ['one worker', testRoom(turned, posts, { corners: testInput(turned, posts).corners.slice(0, 4) })],
]

const vertex = (s: Skin, i: number): number[] => [...s.positions.subarray(i * 3, i * 3 + 3)]

/** A random point of the underside. */
function pick(s: Skin, random: () => number): [number, number, number] {
  const t = Math.floor((random() * s.undersideCount) / 3) * 3
  const [a, b, c] = [0, 1, 2].map((k) => vertex(s, s.indices[t + k]!))
  let [p, q] = [random(), random()]
  if (p + q > 1) [p, q] = [1 - p, 1 - q]
  return [0, 1, 2].map((k) => a![k]! + p * (b![k]! - a![k]!) + q * (c![k]! - a![k]!)) as [
    number,
    number,
    number,
  ]
}

/** Range of the room's direct underside within `near` of a place. */
function around(room: Room, x: number, y: number, near: number): [number, number] {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (let i = 0; i <= 32; i++) {
    const far = i === 32 ? 0 : near * (i % 2 === 0 ? 1 : 0.5)
    const [px, py] = [x + far * Math.cos((i * Math.PI) / 16), y + far * Math.sin((i * Math.PI) / 16)]
    const lid = lidAt(room, px, py)
    const z = Math.min(underside(room, px, py)?.z ?? lid, lid)
    low = Math.min(low, z)
    high = Math.max(high, z)
  }
  return [low, high]
}

/** Lowest height of the skin's underside over a plan point, by trying every triangle. */
function skinUnder(s: Skin, x: number, y: number): number {
  let z = Number.POSITIVE_INFINITY
  for (let t = 0; t < s.undersideCount; t += 3) {
    const [i, k, m] = [s.indices[t]! * 3, s.indices[t + 1]! * 3, s.indices[t + 2]! * 3]
    const p = s.positions
    const det = (p[k]! - p[i]!) * (p[m + 1]! - p[i + 1]!) - (p[m]! - p[i]!) * (p[k + 1]! - p[i + 1]!)
    if (Math.abs(det) < 1e-12) continue
    const u = ((x - p[i]!) * (p[m + 1]! - p[i + 1]!) - (p[m]! - p[i]!) * (y - p[i + 1]!)) / det
    const v = ((p[k]! - p[i]!) * (y - p[i + 1]!) - (x - p[i]!) * (p[k + 1]! - p[i + 1]!)) / det
    if (u < 0 || v < 0 || u + v > 1) continue
    z = Math.min(z, p[i + 2]! + u * (p[k + 2]! - p[i + 2]!) + v * (p[m + 2]! - p[i + 2]!))
  }
  return z
}

describe.each(rooms)('the skin of a room: %s', (_, room) => {
  const skin = skinOf(room)!

  it('is closed and orientable: every edge is run once each way', () => {
    const count = skin.positions.length / 3
    const edges = new Map<number, number>()
    for (let t = 0; t < skin.indices.length; t += 3) {
      for (let k = 0; k < 3; k++) {
        const key = skin.indices[t + k]! * count + skin.indices[t + ((k + 1) % 3)]!
        edges.set(key, (edges.get(key) ?? 0) + 1)
      }
    }
    const bad = [...edges].filter(
      ([key, times]) => times !== 1 || edges.get((key % count) * count + Math.floor(key / count)) !== 1,
    )
    expect(bad).toEqual([])
    expect(skin.volume).toBeGreaterThan(0)
  })

  it('stays within 20 mm of direct evaluation', () => {
    const seed = 4711
    const random = seeded(seed)
    for (let n = 0; n < 1200; n++) {
      const [x, y, z] = pick(skin, random)
      const [low, high] = around(room, x, y, SKIN_TOLERANCE)
      expect(z, `seed ${seed}, point ${n} at ${x} ${y}`).toBeGreaterThan(low - SKIN_TOLERANCE)
      expect(z, `seed ${seed}, point ${n} at ${x} ${y}`).toBeLessThan(high + SKIN_TOLERANCE)
    }
  })

  it('leaves nothing of the room out, and has its volume and footprint', () => {
    const seed = 815
    const random = seeded(seed)
    const p = skin.positions
    let [x0, x1, y0, y1] = [p[0]!, p[0]!, p[1]!, p[1]!]
    for (let i = 0; i < p.length; i += 3) {
      ;[x0, x1] = [Math.min(x0, p[i]!), Math.max(x1, p[i]!)]
      ;[y0, y1] = [Math.min(y0, p[i + 1]!), Math.max(y1, p[i + 1]!)]
    }
    let [area, volume] = [0, 0]
    const side = 60
    for (let i = 0; i < side; i++) {
      for (let k = 0; k < side; k++) {
        const x = x0 + ((x1 - x0) * (i + random())) / side
        const y = y0 + ((y1 - y0) * (k + random())) / side
        const under = underside(room, x, y)
        if (under) {
          area += 1
          volume += Math.max(0, lidAt(room, x, y) - under.z)
        }
        if ((i * side + k) % 23 !== 0) continue
        const got = skinUnder(skin, x, y)
        const [low, high] = around(room, x, y, SKIN_TOLERANCE)
        const where = `seed ${seed}, at ${x} ${y}`
        if (Number.isFinite(got)) {
          expect(got, where).toBeGreaterThan(low - SKIN_TOLERANCE)
          expect(got, where).toBeLessThan(high + SKIN_TOLERANCE)
        } else if (under) expect(high, where).toBeGreaterThan(lidAt(room, x, y) - SKIN_TOLERANCE)
      }
    }
    const cell = ((x1 - x0) * (y1 - y0)) / side ** 2
    expect(skin.footprint / (area * cell)).toBeCloseTo(1, 1)
    expect(Math.abs(skin.footprint - area * cell) / skin.footprint).toBeLessThan(0.02)
    expect(Math.abs(skin.volume - volume * cell) / skin.volume).toBeLessThan(0.02)
  })
})
