/** Lengths as a crew reads them on a tape: feet and inches to 1/8 and whole millimetres, side by side. */
import { formatFeetInches, formatMillimetres, formatQuantity } from '../../plan/units'
import type { Words } from '../words'

export interface Reader {
  /** A length in both systems, the plan's own first. */
  length(m: number | null): string
  /** The same on two lines, for narrow columns. */
  stacked(m: number | null): string
  /** Any other figure in both systems. */
  both(value: number | null, unit: string): string
}

export function reader(words: Words, units: 'us' | 'si'): Reader {
  const local = (text: string): string =>
    text.replace(' ft', ` ${words.feet}`).replace(/ in$/, ` ${words.inches}`)
  const pair = (m: number): [string, string] => {
    const texts: [string, string] = [local(formatFeetInches(m, 8)), formatMillimetres(m)]
    return units === 'us' ? texts : [texts[1], texts[0]]
  }
  const known = (value: number | null): value is number => value !== null && Number.isFinite(value)
  return {
    length: (m) => {
      if (!known(m)) return words.notKnown
      const [a, b] = pair(m)
      return `${a} (${b})`
    },
    stacked: (m) => (known(m) ? pair(m).join('\n') : words.notKnown),
    both: (value, unit) => {
      if (!known(value)) return words.notKnown
      const [a, b] = [formatQuantity(value, unit, 'us'), formatQuantity(value, unit, 'si')]
      return a === b ? a : units === 'us' ? `${a} (${b})` : `${b} (${a})`
    },
  }
}
