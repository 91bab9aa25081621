/** Numbers as they are shown. The minus is the plain one, so that what is shown can be typed again. */

/** Grouped by thousands, with a fixed number of decimals; never "-0". */
export function fixed(value: number, decimals: number): string {
  const text = value.toLocaleString('en-US', {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  })
  return /^-[0.,]*$/.test(text) ? text.slice(1) : text
}

/** Rounded to so many figures and grouped, without an exponent: 14,400 or 45.2. */
export function figures(value: number, count: number): string {
  if (value === 0) return '0'
  const exponent = Math.floor(Math.log10(Math.abs(value)))
  const rounded = Number(value.toPrecision(count))
  const decimals = Math.min(12, Math.max(0, count - 1 - exponent))
  return fixed(rounded, decimals)
}

/** To at most so many decimals, without trailing zeros. */
export function upTo(value: number, decimals: number): string {
  const text = value.toLocaleString('en-US', { maximumFractionDigits: decimals })
  return text === '-0' ? '0' : text
}

/** What stands where a number could not be computed. */
export const NOT_KNOWN = 'not known'
