/** A segment against integrals along its rope, where T, H and V(p) = V - w p are all there is: nothing of the closed form. */
import { describe, expect, it } from 'vitest'
import { expectClose } from '../../tests/support/close'
import { seeded } from '../../tests/support/random'
import { heightAt, pointAt, segmentSpan, segmentTangent } from './catenary'

const SEED = 20261125
const random = seeded(SEED)

/** Gauss-Legendre of five points (Abramowitz & Stegun, table 25.4) in each of `parts` pieces of 0..L. */
const NODES = [
  [0, 128 / 225],
  [0.538469310105683, 0.478628670499366],
  [-0.538469310105683, 0.478628670499366],
  [0.906179845938664, 0.236926885056189],
  [-0.906179845938664, 0.236926885056189],
] as const

function integral(f: (p: number) => number, L: number, parts = 200): number {
  const half = L / parts / 2
  let sum = 0
  for (let i = 0; i < parts; i++) {
    for (const [x, weight] of NODES) sum += weight * f(half * (2 * i + 1 + x))
  }
  return sum * half
}

/** dx, dz and their derivatives: of each bit of rope dp, H/T (1 + T/EA) dp along and V/T (1 + T/EA) dp down. */
function integrals(H: number, V: number, L: number, EA: number, w: number) {
  const up = (p: number): number => V - w * p
  const T = (p: number): number => Math.hypot(H, up(p))
  const of = (f: (p: number) => number): number => integral(f, L)
  const cross = of((p) => (H * up(p)) / T(p) ** 3)
  return {
    dx: of((p) => H / T(p) + H / EA),
    dz: -of((p) => up(p) / T(p) + up(p) / EA),
    xH: of((p) => up(p) ** 2 / T(p) ** 3 + 1 / EA),
    xV: -cross,
    xL: H / T(L) + H / EA,
    zH: cross,
    zV: -of((p) => H ** 2 / T(p) ** 3 + 1 / EA),
    zL: -(up(L) / T(L) + up(L) / EA),
    E: up(L),
    Ta: T(0),
    Tb: T(L),
  }
}

const cases: [string, () => [H: number, V: number, L: number, EA: number, w: number]][] = [
  ['taut', () => [4000, random.between(-300, 300), 9, 2.6e6, 3.55]],
  ['falling all along', () => [500, random.between(-900, -200), 12, 8e5, 6]],
  ['rising all along', () => [500, random.between(200, 900), 3, 8e5, 6]],
  ['steep, falling', () => [2, random.between(-900, -500), 12, 8e5, 6]],
  ['steep, rising', () => [2, random.between(500, 900), 12, 8e5, 6]],
  ['slack, lowest near its far end', () => [30, random.between(50, 70), 12, 8e5, 5.5]],
  ['slack, lowest near its first end', () => [30, random.between(1, 12), 12, 8e5, 5.5]],
  ['nearly weightless', () => [3000, random.between(-2000, 2000), 10, 2.6e6, 10 ** random.between(-7, -4)]],
  ['weightless', () => [3000, random.between(-2000, 2000), 10, 2.6e6, 0]],
  ['soft', () => [3000, random.between(-500, 500), 10, 2e4, 4]],
]

describe.each(cases)('a segment that is %s', (_, make) => {
  it(`has the distances and derivatives of its integrals, seed ${SEED}`, () => {
    for (let i = 0; i < 5; i++) {
      const [H, V, L, EA, w] = make()
      const got = segmentTangent(H, V, L, EA, w)
      const wanted = integrals(H, V, L, EA, w)
      for (const key of Object.keys(wanted) as (keyof typeof wanted)[]) {
        expectClose(got[key], wanted[key], { rel: 2e-11, abs: 1e-15 }, `${key} of ${[H, V, L, EA, w]}`)
      }
      const span = segmentSpan({ H, V, L }, EA, w)
      expectClose(span.dx, wanted.dx, { rel: 2e-12 }, `dx of ${[H, V, L, EA, w]}`)
      expectClose(span.dz, wanted.dz, { rel: 2e-12, abs: 1e-12 }, `dz of ${[H, V, L, EA, w]}`)
    }
  })

  it('has the height of its rope at any distance along', () => {
    for (const share of [0, 0.13, 0.5, 0.77, 1]) {
      const [H, V, L, EA, w] = make()
      const p = share * L
      const { dx, dz } = integrals(H, V, p, EA, w)
      expectClose(heightAt({ H, V, L }, dx, EA, w), dz, { rel: 1e-9, abs: 1e-10 }, `at ${share}`)
      expectClose(pointAt({ H, V, L }, p, EA, w).dz, dz, { rel: 1e-10, abs: 1e-11 })
    }
  })
})

it('has no height at a distance that is no number', () => {
  expect(heightAt({ H: 900, V: 20, L: 9 }, Number.NaN, 2e6, 4)).toBeNaN()
})
