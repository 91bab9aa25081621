/** What every chapter of the calculation package is written with. */
import { formatBoth, type UnitSystem } from '../../plan/units'
import { type HandoverInput, type LineFile, lineFiles } from '../input'
import type { Letters } from '../pdf/letters'
import { type Sheet, sheetOf } from '../pdf/paper'

export interface Chapter {
  input: HandoverInput
  lines: LineFile[]
  letters: Letters
  sheet: Sheet
  units: UnitSystem
  /** A figure in both systems, the plan's own first; "not known" where it could not be computed. */
  both: (value: number | null, unit: string) => string
}

/** The figure in the other system is not broken from its unit at the end of a line. */
const unbroken = (text: string): string => text.replace(/\(.*\)$/, (other) => other.replaceAll(' ', '\u00a0'))

export function chapterOf(input: HandoverInput, letters: Letters): Chapter {
  const { units } = input.plan
  return {
    input,
    lines: lineFiles(input),
    letters,
    sheet: sheetOf(units),
    units,
    both: (value, unit) => unbroken(formatBoth(value, unit, units)),
  }
}
