/**
 * Figures on paper read as numbers again, to be held against the results' own to half of the last digit printed: the
 * papers' formatting is no part of the check.
 */
import { expect } from 'vitest'

const PLAIN = '-?[\\d,]+(?:\\.\\d+)?'
/** What a figure of each unit looks like on paper, and what the printed number is worth in SI. */
const printed: Record<string, { pattern: string; worth: number }> = {
  m: { pattern: `[^()]*? \\((${PLAIN}) (mm|m)\\)`, worth: 1 },
  N: { pattern: `[^()]*? \\((${PLAIN}) (kN)\\)`, worth: 1000 },
  kg: { pattern: `[^()]*? \\((${PLAIN}) (kg)\\)`, worth: 1 },
  deg: { pattern: `(${PLAIN})\u00b0`, worth: 1 },
  ratio: { pattern: `(${PLAIN})`, worth: 1 },
  count: { pattern: `(${PLAIN})`, worth: 1 },
}

/** Reads a figure at the start of `rest`; gives what follows it. Fails where it is another number. */
export function take(rest: string, value: number, unit: string, where: string): string {
  const form = printed[unit]
  if (!form) throw new Error(`no form for the unit ${unit} of ${where}`)
  const found = new RegExp(`^${form.pattern}`).exec(rest)
  expect(found, `${where}: ${rest.slice(0, 60)}`).not.toBeNull()
  const [whole, digits, si] = found!
  const worth = si === 'mm' ? 0.001 : form.worth
  const decimals = digits!.split('.')[1]?.length ?? 0
  // What is counted is whole.
  const half = unit === 'count' ? 0 : 0.5 * 10 ** -decimals * worth
  const read = Number(digits!.replaceAll(',', '')) * worth
  expect(Math.abs(read - value), `${where}: ${whole} for ${value}`).toBeLessThanOrEqual(half * (1 + 1e-9))
  return rest.slice(whole.length).trimStart()
}

/** Whether a row's tail reads as these numbers and nothing else. */
export function reads(
  tail: string,
  wanted: readonly (number | null)[],
  unit: string,
  where: string,
): boolean {
  try {
    let rest = tail
    for (const [i, value] of wanted.entries()) {
      if (value !== null) rest = take(rest, value, unit, where)
      else rest = rest.replace(i === 0 ? /^(-|not known) / : i === 1 ? /^no limit / : /^/, '')
    }
    return rest === ''
  } catch {
    return false
  }
}
