/** Numbers as people type them. A comma only ever separates thousands: which of two readings was meant is not guessed. */

export type Parsed = { ok: true; value: number } | { ok: false; why: string }

export type UnitSystem = 'us' | 'si'

export const parsed = (value: number): Parsed =>
  Number.isFinite(value) ? { ok: true, value } : { ok: false, why: 'the number is too large' }
export const notParsed = (why: string): Parsed => ({ ok: false, why })

const FRACTIONS: Record<string, string> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
}

/** Longest text that is looked at; what people type is far shorter. */
const LONGEST = 60

/** Text with one kind of dash, quote and space, lower case, fractions spelt out. */
export function tidied(text: string): string {
  return text
    .slice(0, LONGEST + 1)
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (c) => ` ${FRACTIONS[c]}`)
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/[\u2019\u2018\u2032\u00b4`]/g, "'")
    .replace(/[\u201c\u201d\u2033]|''/g, '"')
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase()
}

export const tooLong = (text: string): boolean => text.length > LONGEST

const DECIMAL = String.raw`(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d*)?|\.\d+`
const FRACTION = String.raw`\d+ ?\/ ?\d+`
/** Regular expression source of a number without sign: 1,000.5 or 6 1/2 or 6-1/2 or 1/2. */
export const NUMBER = `(?:(?:\\d+[ -])?${FRACTION}|${DECIMAL})`

const WHOLE = new RegExp(`^(?:(?:(\\d+)[ -])?(\\d+) ?\\/ ?(\\d+)|(${DECIMAL})(e[+-]?\\d+)?)$`)

/** The value of a number without sign, or null where it is none or divides by nothing. */
export function unsigned(text: string): number | null {
  const m = WHOLE.exec(text.trim())
  if (!m) return null
  if (m[4] !== undefined) return Number(m[4].replaceAll(',', '') + (m[5] ?? ''))
  const below = Number(m[3])
  return below === 0 ? null : Number(m[1] ?? 0) + Number(m[2]) / below
}

/** A plain number: a count, a ratio, a factor. */
export function parseNumber(text: string): Parsed {
  const t = tidied(text)
  if (t === '') return notParsed('type a number')
  if (tooLong(text)) return notParsed('this is too long for a number')
  const sign = t.startsWith('-') ? -1 : 1
  const value = unsigned(t.replace(/^[-+]/, ''))
  return value === null ? notNumber(text) : parsed(sign * value)
}

/** Says why a text is no number, and what to do about the usual slip. */
export function notNumber(text: string): Parsed {
  if (/\d,\d{1,2}(\D|$)|\d,\d{4,}/.test(text)) {
    return notParsed('a comma separates thousands (1,000); write decimals with a point')
  }
  return notParsed(`"${text.trim().slice(0, 30)}" is no number that can be read here`)
}
