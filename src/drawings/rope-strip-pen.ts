/** What the strip of a rope is drawn with: places are shares of the way from the clamp's end to the tensioner's. */
import { el, type SvgElement } from './svg'
import { textWidth } from './text-size'
import type { Theme } from './theme'

type Anchor = 'start' | 'middle' | 'end'

export interface StripPen {
  theme: Theme
  /** The tensioner is at the left, so left and right are swapped. */
  flip: boolean
  width: number
  x(share: number): number
  /** Between two points, `width` firm strokes wide. */
  line(from: [number, number], to: [number, number], width?: number, dash?: string): SvgElement
  /** A text that stays on the picture. */
  text(x: number, y: number, text: string, anchor: Anchor, bold?: boolean): SvgElement
  /** About a place on the rope. */
  box(share: number, y: number, size: [number, number], fill: string): SvgElement
  ring(share: number, y: number): SvgElement
  /** With its text on a plate in its middle. */
  dimension(from: number, to: number, y: number, text: string): SvgElement[]
}

/** Room beside the stanchions at both ends. */
const PAD = 26

export function stripPen(width: number, flip: boolean, theme: Theme): StripPen {
  const x = (share: number): number => PAD + (width - 2 * PAD) * (flip ? 1 - share : share)
  const stroke = { stroke: theme.inks.ink, fill: 'none', 'stroke-width': theme.stroke }
  const line: StripPen['line'] = ([x1, y1], [x2, y2], firm = 1, dash) =>
    el('line', { x1, y1, x2, y2, ...stroke, 'stroke-width': theme.stroke * firm, 'stroke-dasharray': dash })
  return {
    theme,
    flip,
    width,
    x,
    line,
    text: (at, y, text, anchor, bold = false) => {
      const left = inside(at, textWidth(text, theme.textSize, bold), anchor, width)
      return word(left, y, text, bold, theme)
    },
    box: (share, y, [w, h], fill) =>
      el('rect', { x: x(share) - w / 2, y: y - h / 2, width: w, height: h, ...stroke, fill }),
    ring: (share, y) =>
      el('circle', { cx: x(share), cy: y, r: 4, ...stroke, 'stroke-width': theme.stroke * 1.3 }),
    dimension: (from, to, y, text) => {
      const [a, b] = [Math.min(x(from), x(to)), Math.max(x(from), x(to))]
      const ends = [a, b].map((e) => line([e, y - 3], [e, y + 3], 0.6))
      return [line([a, y], [b, y], 0.6), ...ends, ...plated((a + b) / 2, y, text, theme)]
    },
  }
}

/** Where a text begins, so that it stays on the picture. */
function inside(x: number, size: number, anchor: Anchor, width: number): number {
  const left = anchor === 'middle' ? x - size / 2 : anchor === 'end' ? x - size : x
  return Math.max(1, Math.min(left, width - size - 1))
}

const word = (x: number, y: number, text: string, bold: boolean, theme: Theme): SvgElement =>
  el(
    'text',
    {
      x,
      y,
      fill: theme.inks.ink,
      'font-size': theme.textSize,
      'text-anchor': 'start',
      'font-weight': bold ? 700 : undefined,
    },
    text,
  )

/** A text on a plate about the height `y`, so that the line it stands on does not run through it. */
function plated(x: number, y: number, text: string, theme: Theme): SvgElement[] {
  const size = theme.textSize
  // Widths by kind of character are rounded up; the plate is not, so that the ends of the line stay in sight.
  const w = textWidth(text, size, true) * 0.88
  const left = Math.max(1, x - w / 2)
  const foot = y + size * 0.36
  const plate = { x: left - 2, y: foot - size, width: w + 4, height: size * 1.3, fill: theme.inks.paper }
  return [el('rect', plate), word(left, foot, text, true, theme)]
}
