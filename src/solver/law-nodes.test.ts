/** The nodes of a line law: which loads are solved, where the absorber's kinks lie, and how many solves that takes. */
import { describe, expect, it, vi } from 'vitest'
import { expectClose, solvedValue } from '../../tests/support/close'
import { fullModel } from '../../tests/support/lines'
import { plainAbsorber } from '../../tests/support/rope'
import { installedLine, unloadedLine } from './installed'
import { lawAt, lineLaw } from './line-law'
import { solveLoadedChain } from './loaded'
import type { LineModel } from './model'

vi.mock('./loaded', async (load) => {
  const real = await load<typeof import('./loaded')>()
  return { ...real, solveLoadedChain: vi.fn(real.solveLoadedChain) }
})

const lineOf = (change: Partial<LineModel> = {}, grip: 'sliding' | 'held' = 'sliding') => {
  const model = fullModel(change)
  return solvedValue(unloadedLine(model, solvedValue(installedLine(model, 'soft')), grip))
}
const absorber = { onset: 6000, full: 7000, maxExtension: 0.35 }
const LIMIT = 16_000

describe.each([
  ['no absorber', lineOf({ absorber: null }), 1, []],
  ['an absorber at the end', lineOf(), 2, [6000, 7000]],
  ['an absorber at the start', lineOf({ absorberAt: 'start' }), 0, [6000, 7000]],
  ['an absorber that gives already', lineOf({ pretension: 7000 }), 1, [7000]],
  ['the rope held, away from the absorber', lineOf({}, 'held'), 1, []],
  ['the rope held, at the absorber', lineOf({}, 'held'), 3, [6000, 7000]],
] as const)('a law with %s', (_, line, span, kinks) => {
  const at = 3
  const made = () => solvedValue(lineLaw(line, span, at, LIMIT))

  it('is of its span, and has a node for each load and each kink that it passes', () => {
    const law = made()
    expect([law.span, law.at]).toEqual([span, at])
    for (const n of law.nodes) expect(n.state.span).toBe(line.grip === 'held' ? 0 : span)
    const loads = law.nodes.map((n) => n.P)
    const graded = Array.from({ length: 21 }, (_, j) => LIMIT * (j / 20) ** 1.8)
    for (const P of graded) expect(loads).toContain(P)
    expect(loads).toEqual([...loads].sort((a, b) => a - b))
    const bends = law.nodes.filter((n) => !graded.includes(n.P))
    expect(bends.length).toBe(kinks.length)
    bends.forEach((n, i) => {
      expectClose(n.state.endTension, kinks[i]!, { rel: 1e-9 })
    })
  })

  it('has the slopes of either side at a kink, and one slope elsewhere', () => {
    const law = made()
    const drop = (P: number): number => law.height - law.solve(P)!.height
    for (const n of law.nodes.slice(1)) {
      const h = 1e-4 * n.P
      const [before, past] = [(n.d - drop(n.P - h)) / h, (drop(n.P + h) - n.d) / h]
      expectClose(n.below, before, { rel: 2e-3 }, `below ${n.P}`)
      expectClose(n.above, past, { rel: 2e-3 }, `above ${n.P}`)
      expectClose(n.d, drop(n.P), { abs: 1e-9 })
    }
  })

  it('takes a solve for each load and a dozen or two for each kink: halving alone takes more', () => {
    vi.mocked(solveLoadedChain).mockClear()
    made()
    const solves = vi.mocked(solveLoadedChain).mock.calls.length
    expect(solves).toBeLessThanOrEqual(21 + [0, 21, 27][kinks.length]!)
  })

  it('is solved alike from any load, and not beyond numbers', () => {
    const law = made()
    for (const P of [0, 1, 90, 2500, 15_999, 40_000]) {
      vi.mocked(solveLoadedChain).mockClear()
      const s = law.solve(P)!
      expectClose(s.absorberExtension, plainAbsorber(kinks.length ? absorber : null, s.endTension), {
        abs: 1e-6,
      })
      expect(vi.mocked(solveLoadedChain).mock.calls.length).toBe(1)
    }
    expect(law.solve(Number.NaN)).toBeNull()
  })

  it('ends at its limit, where rounding up a load changes nothing', () => {
    const law = made()
    const last = law.nodes.at(-1)!
    for (const P of [LIMIT, LIMIT * (1 + 1e-12)]) {
      expectClose(lawAt(law, P).d, last.d, { rel: 1e-9 })
      expectClose(lawAt(law, P).U, last.U, { rel: 1e-9 })
    }
  })
})

it('tells which line did not converge, where and under what', () => {
  const line = lineOf()
  const why = (at: number, limit: number): string => {
    const law = lineLaw(line, 1, at, limit)
    return law.ok ? '' : law.why
  }
  expect(why(Number.NaN, 9000)).toBe('the unloaded soft line did not converge in span 2')
  expect(why(4, Number.NaN)).toBe('the soft line did not converge under NaN N in span 2')
})
