/**
 * What a spread is asked and what it says. `SpreadResult` is plain data (numbers, strings, lists): it goes through a
 * worker, into JSON and onto paper as it is. A chapter of the package needs `spreadOf` of spread.ts and this: a
 * histogram from `bins` with `corner` marked, `quantiles`, `rules` with the share of samples that fail each, `matters`
 * with the share of variance each input makes, and `samples`, `seed`, `inputs` and `method` so that it can be repeated.
 */
import type { Plan } from '../../plan/types'
import type { Tolerances } from './inputs'

export interface SpreadTask {
  plan: Plan
  line: string
  samples: number
  seed: number
  tolerances?: Tolerances
}

/** How one figure is distributed. */
export interface Distribution {
  /** The worst corner of the energy method, as the findings have it. */
  corner: number | null
  mean: number
  low: number
  high: number
  /** Quantiles by share: 5, 50, 95, 99 %. */
  quantiles: { share: number; value: number }[]
  bins: { from: number; to: number; count: number }[]
  /** Share of samples beyond the corner. */
  beyond: number
  /** Share of the variance that each input makes by itself, the greatest first. */
  matters: { input: string; label: string; share: number }[]
}

export interface SpreadResult {
  samples: number
  seed: number
  /** Samples whose falls could not be computed; they count in no share. */
  failed: number
  clearance: Distribution
  tension: Distribution
  rules: { rule: string; share: number }[]
  /** Clearance that is there at the worst place, m; null: nothing below limits it. */
  room: number | null
  inputs: { id: string; label: string; low: number; high: number; unit: string }[]
  method: string
}
