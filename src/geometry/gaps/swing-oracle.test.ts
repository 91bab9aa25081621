/**
 * One swing against one triangle, by a search that knows nothing of edges, discs or planes: both distances are convex
 * over the triangle, so that a grid which closes in on its best point finds the least.
 */
import { describe, expect, it, vi } from 'vitest'
import { expectClose } from '../../../tests/support/close'
import { seeded } from '../../../tests/support/random'
import type { Vec3 } from '../../plan/types'
import type { Slice } from '../room/types'
import { facetsOf, planeAt } from './facet'
import { apartIn, mostIn, swingDistance } from './swing-distance'
import { swingGap } from './swing-gap'
import type { Facet } from './types'

const counted = vi.hoisted(() => ({ discs: 0 }))
vi.mock('./disc-distance', async (load) => {
  const real = await load<typeof import('./disc-distance')>()
  const discToFacet: typeof real.discToFacet = (...given) => {
    counted.discs++
    return real.discToFacet(...given)
  }
  return { ...real, discToFacet }
})

const SEED = 20261125
const SIDE = 0.6

const under = (s: Slice, t: number): number => s.z - Math.sqrt(Math.max(0, s.radius ** 2 - t * t))

/** Height of a swing's underside above a point, m: the body covers it from feet as near to the lowest as can be. */
function gapOver(s: Slice, [x, y, z]: Vec3, side = SIDE): number {
  const along = (x - s.x) * s.dx + (y - s.y) * s.dy
  const across = (y - s.y) * s.dx - (x - s.x) * s.dy
  const half = side ** 2 - across ** 2
  if (half < 0) return Number.POSITIVE_INFINITY
  const [from, to] = [along - Math.sqrt(half), along + Math.sqrt(half)]
  if (from > s.reach || to < -s.reach) return Number.POSITIVE_INFINITY
  return under(s, Math.min(Math.max(0, from, -s.reach), Math.min(to, s.reach))) - z
}

/** Distance of a point from a swing in any direction, m, by ternary search along it. */
function distanceOf(s: Slice, [x, y, z]: Vec3): number {
  const at = (t: number): number => {
    const beside = Math.max(0, Math.hypot(x - s.x - t * s.dx, y - s.y - t * s.dy) - SIDE)
    return Math.hypot(beside, Math.max(0, under(s, t) - z))
  }
  let [from, to] = [-s.reach, s.reach]
  for (let i = 0; i < 40; i++) {
    const [a, b] = [from + (to - from) / 3, to - (to - from) / 3]
    if (at(a) <= at(b)) to = b
    else from = a
  }
  return Math.min(at((from + to) / 2), at(-s.reach), at(s.reach))
}

/** The least of a convex function over a triangle. */
function leastOver([a, b, c]: Vec3[], f: (p: Vec3) => number, parts: number): number {
  const point = (u: number, v: number): Vec3 =>
    [0, 1, 2].map((k) => a![k]! + u * (b![k]! - a![k]!) + v * (c![k]! - a![k]!)) as Vec3
  let best = { u: 1 / 3, v: 1 / 3, f: Number.POSITIVE_INFINITY }
  for (let size = 1; size > 1e-7; size *= best.f < Infinity ? 0.6 : 1) {
    const { u, v } = best
    const n = size === 1 ? parts : 4
    for (let i = -n; i <= n; i++) {
      for (let k = -n; k <= n; k++) {
        const p = Math.min(1, Math.max(0, u + (size * i) / n))
        const q = Math.min(1 - p, Math.max(0, v + (size * k) / n))
        const value = f(point(p, q))
        if (value < best.f) best = { u: p, v: q, f: value }
      }
    }
    if (best.f === Infinity) break
  }
  return best.f
}

const random = seeded(SEED)
const spot = (): Vec3 => [random.between(-5, 5), random.between(-4, 4), random.between(5, 11)]
const scenes = Array.from({ length: 120 }, (_, i) => {
  const turn = random.between(0, 2 * Math.PI)
  const radius = random.between(2.5, 6)
  const s: Slice = {
    x: random.between(-0.5, 0.5),
    y: random.between(-0.5, 0.5),
    z: random.between(12, 14),
    dx: Math.cos(turn),
    dy: Math.sin(turn),
    radius,
    reach: radius * random.between(0, 1),
    station: 3,
    corner: 0,
  }
  const size = i % 3 === 0 ? 0.3 : 1
  const [a, b, c] = [spot(), spot(), spot()]
  const near = (p: Vec3): Vec3 => a.map((v, k) => v + (p[k]! - v) * size) as Vec3
  const level = (p: Vec3): Vec3 => [p[0], p[1], a[2]]
  const across =
    (k: 0 | 1) =>
    (p: Vec3): Vec3 => [p[0], p[1], a[2] + 0.5 * (p[k] - a[k])]
  const shape = [level, level, across(0), across(1)][i % 8] ?? ((p: Vec3): Vec3 => p)
  const corners = [a, shape(near(b)), shape(near(c))]
  return { s, corners, facets: facetsOf(corners) }
})

/** The place that is told lies on the facet: its plane, and between its corners. */
function inTriangle(facet: Facet, at: Vec3, [a, b, c]: Vec3[], what: string): void {
  expectClose(at[2], planeAt(facet.plane, at[0], at[1]), { abs: 1e-9 }, `${what}: on the plane`)
  const twice = (p: Vec3, q: Vec3, r: Vec3): number =>
    Math.abs((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]))
  const parts = twice(at, a!, b!) + twice(at, b!, c!) + twice(at, c!, a!)
  expectClose(parts, twice(a!, b!, c!), { abs: 1e-6 }, `${what}: between the corners`)
}

describe(`one swing and one triangle, seed ${SEED}`, () => {
  it('are settled in a few steps to and fro: narrowing alone takes some thirty discs each', () => {
    counted.discs = 0
    for (const { s, facets } of scenes) {
      for (const facet of facets) swingDistance(s, SIDE, facet, Number.POSITIVE_INFINITY)
    }
    expect(counted.discs).toBeLessThan(12 * scenes.length)
    // Most are farther off than 0.5 m: a direction says so at once.
    counted.discs = 0
    for (const { s, facets } of scenes) {
      for (const facet of facets) swingDistance(s, SIDE, facet, 0.5)
    }
    expect(counted.discs).toBeLessThan(4.05 * scenes.length)
  })

  it('have the least height between them that a closing grid finds', () => {
    let met = 0
    for (const [i, { s, corners, facets }] of scenes.entries()) {
      if (facets.length !== 1) continue
      const wanted = leastOver(corners, (p) => gapOver(s, p), 40)
      const found = swingGap(s, SIDE, facets[0]!, Number.POSITIVE_INFINITY)
      if (found) {
        inTriangle(facets[0]!, found.at, corners, `scene ${i}`)
        // A hair more than the body's half-width: on the rim itself rounding decides.
        expectClose(gapOver(s, found.at, SIDE + 1e-7), found.gap, { abs: 2e-3 }, `scene ${i}: reached`)
      }
      // The grid sees no meeting that is narrower than its mesh.
      if (wanted === Number.POSITIVE_INFINITY) continue
      met++
      // A place on the swing is searched to 0.1 mm. On the body's rim the grid comes only near, from within.
      expect(found!.gap, `scene ${i}`).toBeLessThanOrEqual(wanted + 1e-4)
      expect(wanted - found!.gap, `scene ${i}`).toBeLessThan(0.01)
      expect(swingGap(s, SIDE, facets[0]!, found!.gap - 1e-3)).toBeNull()
      expect(swingGap(s, SIDE, facets[0]!, found!.gap + 1e-3)?.gap).toBe(found!.gap)
    }
    expect(met).toBeGreaterThan(40)
  })

  it('have the least distance in any direction that a closing grid finds', () => {
    for (const [i, { s, corners, facets }] of scenes.slice(0, 40).entries()) {
      if (facets.length !== 1) continue
      const wanted = leastOver(corners, (p) => distanceOf(s, p), 6)
      const found = swingDistance(s, SIDE, facets[0]!, Number.POSITIVE_INFINITY)!
      expectClose(found.distance, wanted, { abs: 2e-5 }, `scene ${i}`)
      inTriangle(facets[0]!, found.at, corners, `scene ${i}`)
      expectClose(distanceOf(s, found.at), found.distance, { abs: 2e-5 }, `scene ${i}: reached there`)
      if (found.distance > 1e-3) {
        const n = found.toward!
        expectClose(Math.hypot(...n), 1, { abs: 1e-9 }, `scene ${i}: a direction`)
        expect(n[2]).toBeLessThanOrEqual(0)
        expect(apartIn(n, s, SIDE, facets[0]!)).toBeLessThanOrEqual(found.distance + 1e-9)
        expectClose(
          apartIn(n, s, SIDE, facets[0]!),
          found.distance,
          { abs: 0.05 },
          `scene ${i}: it is that way`,
        )
        expect(swingDistance(s, SIDE, facets[0]!, found.distance - 1e-3)).toBeNull()
      } else if (found.distance === 0) expect(found.toward).toBeNull()
    }
  })

  it('are bounded in a direction by every point that the swing sweeps', () => {
    for (const { s } of scenes) {
      const [a, b] = [random.between(0, 2 * Math.PI), random.between(-Math.PI / 2, 0)]
      const n: Vec3 = [Math.cos(a) * Math.cos(b), Math.sin(a) * Math.cos(b), Math.sin(b)]
      let most = Number.NEGATIVE_INFINITY
      for (let k = -4000; k <= 4000; k++) {
        const t = (s.reach * k) / 4000
        const at = n[0] * (s.x + t * s.dx) + n[1] * (s.y + t * s.dy) + n[2] * under(s, t)
        most = Math.max(most, at)
      }
      expectClose(mostIn(n, s), most, { abs: 2e-6 })
    }
  })
})
