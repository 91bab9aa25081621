/**
 * A picture as data: the tiny part of SVG that the drawings use. The same tree becomes React elements on the screen and
 * text in papers and exported files, so a drawing is made once. Colours and sizes stand in attributes, never in style
 * sheets: printers of PDF read attributes only.
 */

export type SvgTag =
  | 'svg'
  | 'g'
  | 'path'
  | 'rect'
  | 'circle'
  | 'line'
  | 'text'
  | 'tspan'
  | 'title'
  | 'defs'
  | 'clipPath'

export type SvgAttributes = Record<string, string | number>

export interface SvgElement {
  tag: SvgTag
  attributes: SvgAttributes
  children: (SvgElement | string)[]
}

type Loose = Record<string, string | number | undefined>

/** An element; attributes that are undefined are left out, and numbers are rounded to a thousandth. */
export function el(tag: SvgTag, attributes: Loose, ...children: (SvgElement | string)[]): SvgElement {
  const kept: SvgAttributes = {}
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined) continue
    kept[name] = typeof value === 'number' ? round(value) : value
  }
  return { tag, attributes: kept, children }
}

/** The whole picture: width and height in px or, with a unit, as printed ('120mm'). */
export function svgRoot(width: number, height: number, children: SvgElement[], title?: string): SvgElement {
  const label = title === undefined ? [] : [el('title', {}, title)]
  const attributes: Loose = {
    xmlns: 'http://www.w3.org/2000/svg',
    width,
    height,
    viewBox: `0 0 ${round(width)} ${round(height)}`,
    'font-family': 'Inter',
    'aria-label': title,
    role: title === undefined ? undefined : 'img',
  }
  return el('svg', attributes, ...label, ...children)
}

/** Rounded to a thousandth; what is not finite becomes 0, so that a picture never carries NaN. */
export const round = (n: number): number => (Number.isFinite(n) ? Math.round(n * 1000) / 1000 : 0)

/** Path data through points; closed shapes end in Z. */
export function pathData(points: readonly (readonly [number, number])[], closed = false): string {
  const steps = points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${round(x)} ${round(y)}`)
  return steps.join('') + (closed ? 'Z' : '')
}

const entities: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }
// Characters that XML 1.0 forbids; a name that carries one must not break the file.
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are exactly the characters to drop
const forbidden = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g

// Halves of surrogate pairs are no characters, and XML forbids some control characters.
const escapeXml = (text: string): string =>
  [...text]
    .filter((c) => !/^[\ud800-\udfff]$/.test(c))
    .join('')
    .replace(forbidden, '')
    .replace(/[&<>"]/g, (c) => entities[c] ?? c)

/** The tree as SVG text. */
export function svgText(node: SvgElement | string): string {
  if (typeof node === 'string') return escapeXml(node)
  const attributes = Object.entries(node.attributes)
    .map(([name, value]) => ` ${name}="${escapeXml(String(value))}"`)
    .join('')
  if (node.children.length === 0) return `<${node.tag}${attributes}/>`
  return `<${node.tag}${attributes}>${node.children.map(svgText).join('')}</${node.tag}>`
}

/** The tree as a file of its own. */
export const svgFile = (node: SvgElement): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n${svgText(node)}\n`
