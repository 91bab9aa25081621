import { describe, expect, it } from 'vitest'
import { gapsOfPlan, meshTarget } from '../../../src/geometry/gaps'
import { facetsOf } from '../../../src/geometry/gaps/facet'
import { gapToFacets, planDistance } from '../../../src/geometry/gaps/room-gap'
import { boxSolid } from '../../../src/geometry/gaps/solid'
import { lidAt, underside } from '../../../src/geometry/room'
import type { BoxObstacle, MeshObstacle, Plan, Vec3 } from '../../../src/plan/types'
import { seeded, testGirder, testRoom } from './rooms'

const girder = testGirder('G1', [3, -2, 18], [24.6, 4, 18.6])
const room = testRoom(girder, [2.15, 11.25, 20.35])
const mesh = (change: Partial<MeshObstacle> = {}): MeshObstacle => ({
  id: 'M',
  name: 'model',
  kind: 'mesh',
  file: 'model.glb',
  ...change,
})

function measure(triangles: Float32Array, change: Partial<MeshObstacle> = {}) {
  const target = meshTarget(mesh(change), { ok: true, value: { triangles } })
  if (!target.ok) throw new Error(target.why)
  return target.measure(room)
}

/** Loose triangles all over the site, some of them upright. */
function soup(random: () => number, count: number, high: number): Vec3[][] {
  return Array.from({ length: count }, () => {
    const c: Vec3 = [random() * 30 - 1, random() * 14 - 6, random() * high]
    const size = 0.1 + random() * 1.5
    const near = (): Vec3 => [
      c[0] + (random() - 0.5) * size,
      c[1] + (random() - 0.5) * size,
      c[2] + (random() - 0.5) * size,
    ]
    const [a, b] = [near(), near()]
    return random() < 0.2 ? [a, b, [a[0], a[1], a[2] + size]] : [a, b, near()]
  })
}

const flat = (triangles: Vec3[][]): Float32Array => Float32Array.from(triangles.flat(2))

describe('gaps of models', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('finds what trying every triangle finds, seed %i', (seed) => {
    const random = seeded(seed * 104729)
    const list = soup(random, 400, seed % 2 === 0 ? 13 : 20)
    const got = measure(flat(list))
    const under = list.filter((t) => t.some((p) => p[2] < lidAt(room, p[0], p[1])))
    const brute = gapToFacets(
      room,
      under.flatMap((t) => facetsOf(t)),
    )!
    expect(got.point!.gap).toBeCloseTo(brute.gap, 4)
    // And what sampling every triangle finds is never less.
    for (const [a, b, c] of under) {
      for (let n = 0; n < 6; n++) {
        const [p, q] = [random(), random() * 0.5]
        const at = [0, 1, 2].map((k) => a![k]! + p * (1 - q) * (b![k]! - a![k]!) + q * (c![k]! - a![k]!))
        const z = underside(room, at[0]!, at[1]!)?.z
        if (z !== undefined) expect(z - at[2]!).toBeGreaterThan(got.point!.gap - 1e-4)
      }
    }
  })

  it('gives a box of triangles the gap of the box, wherever it is placed, in whatever units and axes', () => {
    const box: BoxObstacle = {
      id: 'B',
      name: 'b',
      kind: 'box',
      center: [12, 1, 9],
      size: [3, 1, 4],
      turn: 25,
    }
    const expected = gapToFacets(room, boxSolid(box).facets)!
    for (const upAxis of ['y', 'z'] as const) {
      const corner = (i: number): Vec3 => {
        const at: Vec3 = [i & 1 ? 1500 : -1500, i & 2 ? 500 : -500, i & 4 ? 2000 : -2000]
        return upAxis === 'z' ? at : [at[0], at[2], -at[1]]
      }
      const faces = [0, 1, 3, 2, 4, 5, 7, 6, 0, 1, 5, 4, 2, 3, 7, 6, 0, 2, 6, 4, 1, 3, 7, 5]
      const triangles: Vec3[][] = []
      for (let f = 0; f < faces.length; f += 4) {
        const [a, b, c, d] = faces.slice(f, f + 4).map(corner)
        triangles.push([a!, b!, c!], [a!, c!, d!])
      }
      const got = measure(flat(triangles), { at: [12, 1, 9], turn: 25, scale: 0.001, upAxis }).point!
      expect(got.gap).toBeCloseTo(expected.gap, 4)
      expect(got.station).toBeCloseTo(expected.station, 6)
      expect(got.at[2]).toBeCloseTo(11, 4)
    }
  })

  it('tells the distance in plan where nothing is shared', () => {
    const list = soup(seeded(99), 200, 10).map((t) => t.map((p): Vec3 => [p[0], p[1] + 40, p[2]]))
    const got = measure(flat(list))
    expect(got.point).toBeNull()
    const brute = planDistance(
      room,
      list.flatMap((t) => facetsOf(t)),
    )!
    expect(Math.abs(got.beside!.distance - brute.distance)).toBeLessThan(0.01)
  })

  it('passes over what lies above the walking surface, and says so', () => {
    const got = measure(
      flat([
        [
          [5, -3, 25],
          [20, 0, 26],
          [12, 6, 25],
        ],
      ]),
    )
    expect(got).toMatchObject({ point: null, beside: null })
    expect(got.note).toContain('above')
  })

  it('does not know the gap of a changed file, an empty one, or one that was not read', () => {
    const plan = { obstacles: [mesh({ fileHash: 'aa' })], girders: [], lines: [] } as unknown as Plan
    const triangles = flat(soup(seeded(5), 3, 10))
    const told = (value: Parameters<typeof meshTarget>[1]) =>
      gapsOfPlan(plan, [room], new Map([['M', meshTarget(mesh({ fileHash: 'aa' }), value)]]))[0]!
    expect(told({ ok: true, value: { triangles, hash: 'bb' } }).unknown).toContain(
      'not the one that was placed',
    )
    expect(told({ ok: true, value: { triangles: new Float32Array(0) } }).unknown).toContain('no triangles')
    expect(told(undefined).unknown).toContain('not read')
    expect(told({ ok: false, why: 'the file is cut short' }).unknown).toBe('the file is cut short')
    expect(told({ ok: true, value: { triangles, hash: 'aa' } }).unknown).toBeUndefined()
  })
})
