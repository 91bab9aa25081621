/** A chain without a load: derivatives along it against differences, and its tension found from starts that are far off. */
import { describe, expect, it, vi } from 'vitest'
import { expectClose } from '../../tests/support/close'
import { plainSegment, slopeOf } from '../../tests/support/rope'
import { addedRope } from './absorber'
import { type Chain, freeChainAt, solveFreeChain, walkSpans } from './chain'
import { freeSpanAtTension } from './span'

vi.mock('./span', async (load) => {
  const real = await load<typeof import('./span')>()
  return { ...real, freeSpanAtTension: vi.fn(real.freeSpanAtTension) }
})

/** Soft, heavy and steep, so that tension and its derivative change from head to head. */
const soft = (change: Partial<Chain> = {}): Chain => ({
  X: [7, 8.5, 5],
  Z: [6, -3, 7],
  EA: 3e4,
  w: 60,
  give: [1e-5, 2e-5],
  heldAt: [900, 1100],
  absorber: { onset: 2500, full: 4000, maxExtension: 0.6 },
  absorberAt: 'end',
  rope: 0,
  ...change,
})

describe.each([1, -1] as const)('walking over a chain, step %i', (step) => {
  const from = step === 1 ? 0 : 2

  it('has the derivatives of its length and far tension, and hands tension on from head to head', () => {
    const c = soft()
    const at = (T: number) => walkSpans(c, from, step, T, [])!
    for (const T of [2200, 3000, 6000]) {
      const spans: Parameters<typeof walkSpans>[4] = []
      const got = walkSpans(c, from, step, T, spans)!
      expectClose(
        got.slope,
        slopeOf((t) => at(t).length, T, 1e-3 * T),
        { rel: 1e-6 },
        `dL/dT at ${T}`,
      )
      expectClose(
        got.farSlope,
        slopeOf((t) => at(t).far, T, 1e-3 * T),
        { rel: 1e-8 },
        `dT/dT at ${T}`,
      )
      expect(Math.abs(got.farSlope - 1)).toBeGreaterThan(1e-3)
      spans.forEach((s, i) => {
        const plain = plainSegment(s!.H, s!.V, s!.L, c.EA, c.w)
        expectClose(plain.dz, c.Z[i]!, { abs: 1e-8 })
        if (i > 0) expectClose(s!.Ta, spans[i - 1]!.Tb, { rel: 1e-9 })
      })
      expectClose(got.far, step === 1 ? spans[2]!.Tb : spans[0]!.Ta, { rel: 1e-12 })
    }
  })
})

describe.each(['start', 'end'] as const)('a chain with its absorber at the %s', (absorberAt) => {
  it.each([1500, 3000, 6000])('finds %f N from anywhere, in few rounds', (T) => {
    const bare = soft({ absorberAt })
    const made = freeChainAt(bare, T)!
    const rope = made.length - addedRope(bare.absorber, T, bare.EA).rope
    let most = 0
    for (const guess of [0.5, 40, 400, 1500, 3000, 9000, 1e5, 1e7]) {
      vi.mocked(freeSpanAtTension).mockClear()
      const found = solveFreeChain({ ...bare, rope }, guess)
      expectClose(found?.tension, T, { rel: 1e-8 }, `from ${guess} N`)
      expectClose(found?.length, made.length, { rel: 1e-10 })
      most = Math.max(most, vi.mocked(freeSpanAtTension).mock.calls.length)
    }
    expect(most, 'spans solved').toBeLessThanOrEqual(55)
    vi.mocked(freeSpanAtTension).mockClear()
    solveFreeChain({ ...bare, rope }, T)
    expect(vi.mocked(freeSpanAtTension).mock.calls.length, 'known again at once').toBe(3)
  })
})

it('gives nothing where there is no number to find', () => {
  expect(solveFreeChain(soft({ rope: Number.NaN }), 3000)).toBeNull()
  expect(solveFreeChain(soft({ rope: 25 }), Number.NaN)).toBeNull()
})
