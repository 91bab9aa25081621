/** The table at the end of a run, beside the figures of the committed baseline. */
import type { Timed } from './harness'

/** What was measured when the baseline was written, by bench and name. */
export type Baseline = Record<string, Pick<Timed, 'median' | 'checksum'>>

export const keyOf = (bench: string, t: Timed): string => `${bench}: ${t.name}`

const ms = (v: number): string => v.toFixed(v >= 100 ? 0 : v >= 1 ? 2 : 4).padStart(9)

/** One line: median, spread, checksum, and the median as a ratio to the baseline's, which another machine may have made. */
export function row(bench: string, t: Timed, baseline: Baseline): string {
  const was = baseline[keyOf(bench, t)]
  const ratio = was ? (t.median / was.median).toFixed(2).padStart(6) : '     -'
  const changed = was && was.checksum !== t.checksum ? '  other results than the baseline' : ''
  const spread = `${ms(t.low).trim()} to ${ms(t.high).trim()}`.padEnd(20)
  return `${t.name.padEnd(62)}${ms(t.median)} ms ${ratio}  ${spread}${t.checksum}${changed}${t.note ? `  ${t.note}` : ''}`
}

export const HEAD = `${'bench'.padEnd(62)}${'median'.padStart(12)} ${'ratio'.padStart(6)}  ${'spread, ms'.padEnd(20)}checksum`
