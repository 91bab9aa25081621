/** Texts and dimensions of a drawing: each gets a place where it lies on no other. */
import type { Box, LabelSpace } from './labels'
import type { DimensionMark, TextMark } from './marks'
import { el, pathData, type SvgElement } from './svg'
import { textWidth } from './text-size'
import type { Theme } from './theme'
import { type Point, toPicture, type View } from './view'

/** What a plate takes beyond its text, picture units. */
const PLATE = 3

export function textShapes(mark: TextMark, view: View, theme: Theme, space: LabelSpace): SvgElement[] {
  const size = theme.textSize * (mark.size ?? 1)
  const [x, y] = toPicture(view, mark.at)
  const anchor = mark.anchor ?? 'middle'
  const wanted: Point = [x + (mark.shift?.[0] ?? 0), y + (mark.shift?.[1] ?? 0)]
  const bold = mark.bold ?? false
  const request = { at: wanted, text: mark.text, size, bold, anchor, dodge: mark.dodge }
  const grow = mark.plate ? PLATE : 0
  const placed = space.place({ ...request, grow, optional: mark.optional ?? false })
  if (!placed) return []
  const fill = theme.inks[mark.ink ?? 'ink']
  const ground = mark.plate
    ? [plate(placed.box, theme.inks[mark.plate], PLATE, mark.ref)]
    : backing(placed.box, theme)
  const halo = mark.plate || theme.medium === 'paper' ? undefined : theme.inks.paper
  return [...ground, word(placed.at, mark.text, size, bold, anchor, fill, mark.ref, halo)]
}

const plate = (box: Box, fill: string, grow: number, ref?: string): SvgElement =>
  el('rect', {
    x: box.left - grow,
    y: box.top - grow * 0.7,
    width: box.right - box.left + grow * 2,
    height: box.bottom - box.top + grow * 1.4,
    rx: grow,
    fill,
    'data-ref': ref,
  })

/** On paper, lines that run behind a text are paled out; on the screen a halo does it. */
const backing = (box: Box, theme: Theme): SvgElement[] => {
  if (theme.medium === 'screen') return []
  const { left, right, top, bottom } = box
  const ground = { x: left, y: top, width: right - left, height: bottom - top, fill: theme.inks.paper }
  return [el('rect', { ...ground, 'fill-opacity': 0.7 })]
}

function word(
  [x, y]: Point,
  text: string,
  size: number,
  bold: boolean,
  anchor: string,
  fill: string,
  ref?: string,
  halo?: string,
  haloWidth = 3,
): SvgElement {
  const attributes = {
    x,
    y,
    'font-size': size,
    'font-weight': bold ? 'bold' : undefined,
    'text-anchor': anchor === 'start' ? undefined : anchor,
    fill,
    stroke: halo,
    'stroke-width': halo ? haloWidth : undefined,
    'stroke-linejoin': halo ? 'round' : undefined,
    'paint-order': halo ? 'stroke' : undefined,
    'data-ref': ref,
  }
  return el('text', attributes, text)
}

/** A dimension line with end strokes and its text above it or, upwards, beside it. */
export function dimensionShapes(
  mark: DimensionMark,
  view: View,
  theme: Theme,
  space: LabelSpace,
): SvgElement[] {
  const [a, b] = [toPicture(view, mark.from), toPicture(view, mark.to)]
  const size = theme.textSize
  const across = mark.axis === 'across'
  const away = across ? Math.min(a[1], b[1]) - mark.away : Math.max(a[0], b[0]) + mark.away
  const ends: [Point, Point] = across
    ? [
        [a[0], away],
        [b[0], away],
      ]
    : [
        [away, a[1]],
        [away, b[1]],
      ]
  const middle: Point = [(ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2]
  // Where the text is wider than what it measures, it would be read with its neighbour's.
  if (mark.optional && across && Math.abs(b[0] - a[0]) < textWidth(mark.text, size)) return []
  const anchor = across ? 'middle' : 'start'
  const wanted: Point = across ? [middle[0], away - size * 0.4] : [away + size * 0.5, middle[1] + size * 0.35]
  const request = { at: wanted, text: mark.text, size, bold: false, anchor } as const
  const dodge = across ? ('up' as const) : ('down' as const)
  const placed = space.place({ ...request, dodge, optional: mark.optional ?? false })
  if (!placed) return []
  const stroke = theme.inks[mark.ink ?? 'quiet']
  const lines = dimensionLines(a, b, ends, across, theme.stroke * 4)
  const shape = el('path', { d: lines, fill: 'none', stroke, 'stroke-width': theme.stroke * 0.5 })
  const fill = theme.inks[mark.ink ?? 'ink']
  const halo = theme.medium === 'paper' ? undefined : theme.inks.paper
  const text = word(placed.at, mark.text, size, false, anchor, fill, mark.ref, halo, mark.clear ? 7 : 3)
  return [shape, ...backing(placed.box, theme), text]
}

function dimensionLines(a: Point, b: Point, ends: [Point, Point], across: boolean, tick: number): string {
  const strokes = ends.map(([x, y]): [Point, Point] => [
    [x - tick / 2, y + tick / 2],
    [x + tick / 2, y - tick / 2],
  ])
  const extension = (from: Point, to: Point): [Point, Point] => {
    const past = across ? Math.sign(to[1] - from[1]) * tick : Math.sign(to[0] - from[0]) * tick
    return [from, across ? [to[0], to[1] + past] : [to[0] + past, to[1]]]
  }
  return [ends, ...strokes, extension(a, ends[0]), extension(b, ends[1])].map((l) => pathData(l)).join('')
}
