/**
 * Which parts of a text run from right to left. The papers' sentences run from left to right and carry names and figures;
 * a figure must never be drawn to the wrong side of a name, nor away from its unit. So each name is a part of its own,
 * and figures beside it are not in it; the algorithm alone would draw "NAME: 7 ft" as "7 :NAME ft".
 */

/** Letters of the scripts that run from right to left, Hebrew to Adlam, and the forms for their presentation. */
const TURNED =
  /[\u0590-\u065f\u066a-\u06ef\u06fa-\u08ff\ufb1d-\ufdff\ufe70-\ufefe\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u
/** Letters of all others. */
const STRAIGHT = /(?!\p{Script=Hebrew}|\p{Script=Arabic})\p{L}/u
/** A figure with a unit, or a letter close to it: then the text is a sentence of the papers, not a name. */
const MEASURE = /\p{Nd}[ \u00a0]?(?=\p{L})/u
/** What stands between a name and what is told of it. */
const BETWEEN = /[:;=,]/u
/** A number that ends a name: "Girder 2:", but not "Girder 2 ft". */
const NUMBER_AT_END = /^[ \u00a0-]?\p{Nd}+(?=$|[:;,.)\]]+(?:\s|$))/u

const isTurned = (c: string): boolean => TURNED.test(c)
const isStraight = (c: string): boolean => !isTurned(c) && STRAIGHT.test(c)

export const hasTurned = (text: string): boolean => TURNED.test(text)

type Part = [number, number]

/** As [start, end) in the text's own order; `names` are texts that stay whole wherever they stand, the longest first. */
export function turnedParts(text: string, names: readonly string[] = []): Part[] {
  if (!hasTurned(text)) return []
  return isOwnText(text) ? [[0, text.length]] : around(text, names.filter(isOwnText))
}

/** Names whole, and what the rules find between them. */
function around(text: string, names: readonly string[]): Part[] {
  const name = names.find((n) => text.includes(n))
  if (name === undefined) return hasTurned(text) ? partsOfSentence(text) : []
  const at = text.indexOf(name)
  const end = at + name.length
  const after = around(text.slice(end), names).map(([a, b]): Part => [a + end, b + end])
  return [...around(text.slice(0, at), names), [at, end], ...after]
}

function partsOfSentence(text: string): Part[] {
  return spans(text, 0, text.length, isStraight).flatMap(([start, end]) => {
    const part = text.slice(start, end)
    const mixed = /\p{Nd}/u.test(part) && BETWEEN.test(part)
    const parts = mixed ? spans(text, start, end, (c) => BETWEEN.test(c)) : [[start, end] as Part]
    return parts.map(([a, b]): Part => [a, withEnd(text, a, b)])
  })
}

/** A title or note in such a script: it begins with it, is mostly of it, and tells no measure. */
function isOwnText(text: string): boolean {
  const all = [...text]
  const first = all.find((c) => isTurned(c) || isStraight(c))
  const turned = all.filter(isTurned).length
  return first !== undefined && isTurned(first) && turned > all.filter(isStraight).length && !hasMeasure(text)
}

const hasMeasure = (text: string): boolean => {
  const found = [...text.matchAll(new RegExp(MEASURE, 'gu'))]
  return found.some((m) => isStraight(String.fromCodePoint(text.codePointAt(m.index + m[0].length)!)))
}

/** From the first turned letter to the last, within which no letter is that parts them. */
function spans(text: string, from: number, to: number, parts: (c: string) => boolean): Part[] {
  const found: Part[] = []
  let open: Part | null = null
  let at = from
  for (const c of text.slice(from, to)) {
    if (isTurned(c)) {
      open ??= [at, at]
      open[1] = at + c.length
    } else if (open && parts(c)) {
      found.push(open)
      open = null
    }
    at += c.length
  }
  return open ? [...found, open] : found
}

/** With the number that ends it, and the bracket that closes what was opened within. */
function withEnd(text: string, start: number, end: number): number {
  const numbered = end + (NUMBER_AT_END.exec(text.slice(end))?.[0].length ?? 0)
  const part = text.slice(start, numbered)
  const opened = part.split('(').length > part.split(')').length
  return opened && text[numbered] === ')' ? numbered + 1 : numbered
}
