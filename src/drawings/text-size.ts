/**
 * How wide a text will be, without asking a browser: widths of Inter by kind of character, in parts of the text size,
 * rounded up a little, so that a box that fits by this sum fits on screen and paper.
 */
const NARROW = new Set(" ilIj.,:;'|!()[]/\\-frt\u2019\u2032\u2033".split(''))
const WIDE = new Set('mwMW@%\u2014'.split(''))

function characterWidth(c: string): number {
  if (NARROW.has(c)) return 0.38
  if (WIDE.has(c)) return 0.92
  const code = c.codePointAt(0) ?? 0
  if (code >= 0x1100) return 1.05
  if (c >= '0' && c <= '9') return 0.65
  return c === c.toLowerCase() ? 0.6 : 0.74
}

/** Width of one line of text in the unit of `size`. */
export function textWidth(text: string, size: number, bold = false): number {
  let sum = 0
  for (const c of text) sum += characterWidth(c)
  return sum * size * (bold ? 1.06 : 1)
}

/** A text cut to fit, with an ellipsis where something was cut. */
export function fitText(text: string, size: number, width: number): string {
  if (textWidth(text, size) <= width) return text
  const letters = [...text]
  while (letters.length > 1 && textWidth(`${letters.join('')}\u2026`, size) > width) letters.pop()
  return `${letters.join('').trimEnd()}\u2026`
}
