/** One paper: its letters, its sizes and the small blocks that all papers are put together from. */
import type {
  Content,
  ContentTable,
  ContentText,
  CustomTableLayout,
  Style,
  TableCell,
  TDocumentDefinitions,
} from 'pdfmake/interfaces'
import { el, type SvgElement, svgText } from '../../drawings/svg'
import { fitText } from '../../drawings/text-size'
import type { Letters } from './letters'

export interface Sheet {
  width: number
  height: number
  margin: { left: number; top: number; right: number; bottom: number }
}

/** Points. US plans are printed on letter paper, the others on A4. */
export function sheetOf(units: 'us' | 'si', landscape = false): Sheet {
  const [short, long] = units === 'us' ? [612, 792] : [595.28, 841.89]
  const margin = { left: 40, top: 50, right: 40, bottom: 50 }
  return landscape ? { width: long, height: short, margin } : { width: short, height: long, margin }
}

export const inner = (sheet: Sheet): { width: number; height: number } => ({
  width: sheet.width - sheet.margin.left - sheet.margin.right,
  height: sheet.height - sheet.margin.top - sheet.margin.bottom,
})

export interface TextStyle {
  bold?: boolean
  size?: number
  color?: string
  align?: 'left' | 'right' | 'center'
  /** Width that the text has, in text sizes; only texts from right to left ask. */
  room?: number
}

/** A text in as many fonts as its letters need. */
export function say(letters: Letters, text: string, style: TextStyle = {}): ContentText {
  const runs = letters.runs(text, style.room)
  const common = {
    ...(style.bold ? { bold: true } : {}),
    ...(style.size ? { fontSize: style.size } : {}),
    ...(style.color ? { color: style.color } : {}),
    ...(style.align ? { alignment: style.align } : {}),
  }
  return { text: runs.map((r) => ({ ...r })), ...common }
}

export const heading = (letters: Letters, text: string, level: 1 | 2 | 3 = 1): Content => {
  const size = { 1: 16, 2: 12, 3: 10 }[level]
  const above = { 1: 0, 2: 9, 3: 6 }[level]
  return { ...say(letters, text, { bold: true, size }), margin: [0, above, 0, 4], headlineLevel: level }
}

/**
 * Blocks that stay on one page. A heading within them is no place to begin a page at: the engine would leave all of them
 * out, so they are kept from the rule about headings at the foot of a page.
 */
export function together(blocks: Content[]): Content {
  const plain = blocks.map((b): Content => {
    if (typeof b !== 'object' || !('headlineLevel' in b)) return b
    const { headlineLevel: _, ...rest } = b as ContentText & { headlineLevel?: number }
    return rest
  })
  return { stack: plain, unbreakable: true }
}

/** A rule between rows only, a firmer one under the head; readable in black and white. */
const ruled: CustomTableLayout = {
  hLineWidth: (i, node) =>
    i === 0 || i === node.table.body.length ? 0.7 : i === (node.table.headerRows ?? 0) ? 0.9 : 0.3,
  vLineWidth: (): number => 0,
  hLineColor: (): string => '#000000',
  paddingLeft: (i: number): number => (i === 0 ? 0 : 4),
  paddingRight: (): number => 4,
  paddingTop: (): number => 2.5,
  paddingBottom: (): number => 2.5,
}

/** Rules all round, for boxes that are filled in by hand. */
const boxed: CustomTableLayout = {
  ...ruled,
  hLineWidth: (): number => 0.6,
  vLineWidth: (): number => 0.6,
  vLineColor: (): string => '#000000',
  paddingLeft: (): number => 4,
}

const tight: CustomTableLayout = { paddingTop: () => 1.6, paddingBottom: () => 1.4 }

export interface TableInput {
  /** Names of the columns; all empty: no head. */
  head: string[]
  rows: (string | Content)[][]
  widths?: (number | string)[]
  /** Columns set at the right, by index. */
  right?: number[]
  size?: number
  boxed?: boolean
  /** Rows close together, for tables that must share a page. */
  tight?: boolean
  /** Least height of a row, points, for writing by hand. */
  rowHeight?: number
}

/** What columns that share the rest of a page's width have together with the fixed ones, points: the narrower page. */
const PAGE = 500

/** Width of a column in text sizes; one that takes its width from its texts has a page's. */
function roomOf({ widths = [], size = 8 }: TableInput, i: number): number {
  const width = widths[i]
  if (typeof width === 'number') return width / size
  const fixed = widths.reduce((sum: number, w) => sum + (typeof w === 'number' ? w + 8 : 8), 0)
  const stars = widths.filter((w) => w === '*').length
  return Math.max(60, (PAGE - fixed) / Math.max(1, stars)) / size
}

/** A table whose head stands again on every page that it runs over; a row is never torn apart. */
export function table(letters: Letters, t: TableInput): Content {
  const right = new Set(t.right ?? [])
  const cell = (c: string | Content, i: number, bold: boolean): TableCell =>
    typeof c === 'string'
      ? say(letters, c, { bold, room: roomOf(t, i), ...(right.has(i) ? { align: 'right' } : {}) })
      : (c as TableCell)
  const headed = t.head.some((h) => h !== '')
  const body = [
    ...(headed ? [t.head.map((h, i) => cell(h, i, true))] : []),
    ...t.rows.map((row) => row.map((c, i) => cell(c, i, false))),
  ]
  const content: ContentTable = {
    layout: { ...(t.boxed ? boxed : ruled), ...(t.tight ? tight : {}) },
    fontSize: t.size ?? 8,
    table: {
      headerRows: headed ? 1 : 0,
      ...(headed ? { keepWithHeaderRows: 1 } : {}),
      dontBreakRows: true,
      widths: t.widths ?? t.head.map(() => 'auto'),
      body,
      ...(t.rowHeight ? { heights: (row: number) => (headed && row === 0 ? 'auto' : t.rowHeight!) } : {}),
    },
    margin: t.tight ? [0, 1, 0, 3] : [0, 2, 0, 8],
  }
  return content
}

/** A drawing at its own size in points, so that its stated scale holds on paper. */
export const drawing = (picture: SvgElement, letters: Letters): Content => ({
  svg: svgText(withLetters(picture, letters)),
  margin: [0, 2, 0, 6],
})

/** Width of a blank, in text sizes. */
const BLANK = 0.32

/** Every text of a picture in a font that has its letters. */
function withLetters(node: SvgElement, letters: Letters): SvgElement {
  const children = node.children.map((c) => (typeof c === 'string' ? c : withLetters(c, letters)))
  if (node.tag === 'title') return { ...node, children: [] }
  if (node.tag !== 'text') return { ...node, children }
  const runs = letters.label(children.filter((c) => typeof c === 'string').join(''))
  const [first] = runs
  if (runs.length < 2) {
    const font = first?.font ?? 'Inter'
    return { ...node, attributes: { ...node.attributes, 'font-family': font }, children: [first?.text ?? ''] }
  }
  const size = Number(node.attributes['font-size'] ?? 0)
  const spans = runs.map((r) =>
    el('tspan', { 'font-family': r.font, dx: r.after ? size * BLANK : undefined }, r.text),
  )
  return { ...node, children: spans }
}

/** Figures of one width; and letters stay what they are (Inter would make a cross of the x in 7x19). */
const fontFeatures = { tnum: true, calt: false } as unknown as PDFKit.Mixins.OpenTypeFeatures[]

/** A heading that would begin below this share of a page goes to the next one, with what it heads. */
const LOWEST_HEADING = 0.88

/** Pictures find a font only once a text has used it: two unseen spaces bring the stand-ins in. */
const standIns: Content = {
  text: [
    { text: ' ', font: 'Fallback' },
    { text: ' ', font: 'Fallback', bold: true },
  ],
  fontSize: 0.5,
  lineHeight: 0.1,
}

export interface Frame {
  sheet: Sheet
  title: string
  /** At the head of every page, left and right. */
  head: [string, string]
  /** At the foot of every page, on the left; the page number stands at the right. */
  foot: string[]
  page: (page: number, of: number) => string
  madeAt: string
  size?: number
  lineHeight?: number
  /** Text size of the left of the head; the rest of head and foot is small. */
  headSize?: number
}

const SMALL = 7.5
/** Head and foot are cut to their room before they are set. */
const WHOLE = Number.POSITIVE_INFINITY

/** A document with the same head and foot on every page. */
export function framed(letters: Letters, frame: Frame, content: Content[]): TDocumentDefinitions {
  const { margin, width, height } = frame.sheet
  const rule = (y: number): Content => ({
    canvas: [{ type: 'line', x1: margin.left, x2: width - margin.right, y1: y, y2: y, lineWidth: 0.7 }],
  })
  const columns = (left: Content, right: string): Content => ({
    columns: [left, { ...say(letters, right, { align: 'right', room: WHOLE }), width: 'auto' }],
    columnGap: 12,
    margin: [margin.left, 0, margin.right, 0],
    fontSize: SMALL,
  })
  // What does not fit is cut, so that head and foot never grow into the page; the page says it in full.
  const { width: room } = inner(frame.sheet)
  const size = frame.headSize ?? SMALL
  const left = fitText(frame.head[0], size, room * 0.6)
  const right = fitText(frame.head[1], SMALL, room * 0.36)
  const foot = frame.foot.map((f) => fitText(f, SMALL, room * 1.6))
  const when = new Date(frame.madeAt)
  return {
    pageSize: { width, height },
    pageMargins: [margin.left, margin.top, margin.right, margin.bottom],
    info: {
      title: frame.title,
      creator: 'Fallroom',
      producer: 'Fallroom',
      ...(Number.isNaN(when.getTime()) ? {} : { creationDate: when }),
    },
    defaultStyle: {
      font: 'Inter',
      fontSize: frame.size ?? 9,
      lineHeight: frame.lineHeight ?? 1.12,
      fontFeatures,
    } as Style,
    header: () => ({
      stack: [columns(say(letters, left, { bold: true, size, room: WHOLE }), right), rule(4)],
      margin: [0, 22 - (size - SMALL), 0, 0],
    }),
    footer: (page, of) => ({
      stack: [
        rule(0),
        {
          stack: [
            columns({ stack: foot.map((f) => say(letters, f, { room: WHOLE })) }, frame.page(page, of)),
          ],
          margin: [0, 4, 0, 0],
        },
      ],
    }),
    content: [...(letters.stoodIn() ? [standIns] : []), ...content],
    // A heading never stands alone at the foot of a page.
    pageBreakBefore: (node) =>
      node.headlineLevel !== undefined && node.startPosition.verticalRatio > LOWEST_HEADING,
  }
}
