/** A loaded chain found from starts that are far off, in few rounds; what has no solution gives none. */
import { describe, expect, it, vi } from 'vitest'
import { expectClose, solvedValue } from '../../tests/support/close'
import { fullModel } from '../../tests/support/lines'
import { installedLine, unloadedLine } from './installed'
import { solveLoadedChain } from './loaded'
import { loadedSpan } from './span'

vi.mock('./span', async (load) => {
  const real = await load<typeof import('./span')>()
  return { ...real, loadedSpan: vi.fn(real.loadedSpan) }
})

const chainOf = (change: Parameters<typeof fullModel>[0] = {}) => {
  const model = fullModel(change)
  return solvedValue(unloadedLine(model, solvedValue(installedLine(model, 'soft')), 'sliding')).chains[0]!
}

const rounds = <T>(solve: () => T): { found: T; spans: number } => {
  vi.mocked(loadedSpan).mockClear()
  const found = solve()
  return { found, spans: vi.mocked(loadedSpan).mock.calls.length }
}

describe.each([
  ['absorber at the end', chainOf()],
  ['absorber at the start', chainOf({ absorberAt: 'start' })],
  ['a heavy rope', chainOf({ massPerMetre: 1.5, pretension: 900 })],
])('a chain with %s', (_, chain) => {
  it.each([0, 40, 3000, 12_000])('under %f N is found from anywhere', (P) => {
    const near = solveLoadedChain(chain, 1, 4, P, { H: 3000, others: [] })
    expect(near).not.toBeNull()
    let all = 0
    for (const H of [1e-3, 0.1, 2, 9, 60, 800, 9e3, 6e4, 4e5, 3e6]) {
      const { found, spans } = rounds(() => solveLoadedChain(chain, 1, 4, P, { H, others: [] }))
      expectClose(found?.H, near!.H, { rel: 1e-9 }, `from ${H} N`)
      expectClose(found?.height, near!.height, { abs: 1e-9 })
      all += spans
      expect(spans, `rounds from ${H} N`).toBeLessThanOrEqual(H < 50 ? 70 : 24)
    }
    const { spans } = rounds(() => solveLoadedChain(chain, 1, 4, P, near!))
    expect(spans, 'a solution is known again at once').toBe(1)
    expect(all).toBeLessThan(245)
  })
})

it('leaves a solution as it was when another starts from it', () => {
  const chain = chainOf()
  const first = solveLoadedChain(chain, 1, 4, 3000, { H: 3000, others: [] })!
  const before = structuredClone(first)
  const second = solveLoadedChain(chain, 1, 4, 5000, first)!
  expect(first).toEqual(before)
  expect(second.at).not.toBe(first.at)
  expectClose(second.H, solveLoadedChain(chain, 1, 4, 5000, { H: 3000, others: [] })!.H, { rel: 1e-9 })
})

it('gives nothing where there is no number to find', () => {
  const chain = chainOf()
  expect(solveLoadedChain(chain, 1, 4, Number.NaN, { H: 3000, others: [] })).toBeNull()
  expect(solveLoadedChain({ ...chain, rope: Number.NaN }, 1, 4, 500, { H: 3000, others: [] })).toBeNull()
})
