/** Numbers as they are shown. The minus is the plain one, so that what is shown can be typed again. */

/** Making a format is slow and there are few of them. */
const formats = new Map<string, Intl.NumberFormat>()

function grouped(value: number, least: number, most: number): string {
  const key = `${least},${most}`
  let format = formats.get(key)
  if (!format) {
    format = new Intl.NumberFormat('en-US', { minimumFractionDigits: least, maximumFractionDigits: most })
    formats.set(key, format)
  }
  const text = format.format(value)
  return /^-[0.,]*$/.test(text) ? text.slice(1) : text
}

/** Grouped by thousands, with a fixed number of decimals; never "-0". */
export function fixed(value: number, decimals: number): string {
  return grouped(value, decimals, decimals)
}

/** To at most so many decimals, without trailing zeros. */
export function upTo(value: number, decimals: number): string {
  return grouped(value, 0, decimals)
}

/** Below this nothing that is shown here differs from nothing. */
const NOTHING = 1e-9

/** Rounded to so many figures and grouped, without an exponent: 14,400 or 45.2. */
export function figures(value: number, count: number): string {
  const rounded = Number(value.toPrecision(count))
  if (Math.abs(rounded) < NOTHING) return '0'
  const exponent = Math.floor(Math.log10(Math.abs(rounded)) + 1e-12)
  return fixed(rounded, Math.max(0, count - 1 - exponent))
}

/** What stands where a number could not be computed. */
export const NOT_KNOWN = 'not known'
