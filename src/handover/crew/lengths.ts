/** Lengths as a crew reads them on a tape: feet and inches to 1/8 and whole millimetres, side by side. */
import { formatFeetInches, formatMillimetres, formatQuantity } from '../../plan/units'
import type { Words } from '../words'

export interface Reader {
  /** Names of the two ways in which lengths stand, the plan's own first. */
  systems: [string, string]
  /** A length in both, the plan's own first. */
  pair(m: number | null): [string, string]
  /** The same without the second unit where a column's head says it. */
  bare(m: number | null): [string, string]
  /** The same in one text. */
  length(m: number | null): string
  /** The same on two lines, for narrow columns. */
  stacked(m: number | null): string
  /** Any other figure in both systems. */
  both(value: number | null, unit: string): string
}

/** A number and its unit never part at the end of a line. */
const unbroken = (text: string): string => text.replace(/ /g, '\u00a0')

export function reader(words: Words, units: 'us' | 'si'): Reader {
  const local = (text: string): string =>
    text
      .replace(/^(-?)1 ft/, (_, sign: string) => `${sign}1 ${words.foot}`)
      .replace(' ft', ` ${words.feet}`)
      .replace(/ in$/, ` ${words.inches}`)
  const inOrder = (us: string, si: string): [string, string] => (units === 'us' ? [us, si] : [si, us])
  const known = (value: number | null): value is number => value !== null && Number.isFinite(value)
  const pair = (m: number | null): [string, string] =>
    known(m)
      ? inOrder(unbroken(local(formatFeetInches(m, 8))), unbroken(formatMillimetres(m)))
      : [words.notKnown, '']
  return {
    systems: inOrder(`${words.feet}-${words.inches}`, 'mm'),
    pair,
    bare: (m) => pair(m).map((t) => t.replace(/\u00a0mm$/, '')) as [string, string],
    length: (m) => {
      const [a, b] = pair(m)
      return b ? `${a} (${b})` : a
    },
    stacked: (m) => pair(m).filter(Boolean).join('\n'),
    both: (value, unit) => {
      if (!known(value)) return words.notKnown
      const [us, si] = (['us', 'si'] as const).map((s) => unbroken(formatQuantity(value, unit, s)))
      const [a, b] = inOrder(us!, si!)
      return a === b ? a : `${a} (${b})`
    },
  }
}
