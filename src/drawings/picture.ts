/** Marks in metres to a picture tree in picture units, with texts placed so that none overlaps another. */
import { LabelSpace } from './labels'
import type { DotMark, Mark, PathMark } from './marks'
import { dimensionShapes, textShapes } from './picture-text'
import { el, pathData, type SvgElement, svgRoot } from './svg'
import type { Theme } from './theme'
import { type Point, toPicture, type View } from './view'

export interface PictureOptions {
  title?: string
  /** Fills the ground of the picture; absent: see-through. */
  ground?: boolean
}

/** The picture of a list of marks: shapes in their order, then dimensions, then texts. */
export function picture(marks: readonly Mark[], view: View, theme: Theme, options: PictureOptions = {}) {
  const space = new LabelSpace(view.width, view.height)
  const shapes: SvgElement[] = []
  const words: SvgElement[] = []
  if (options.ground) shapes.push(groundOf(view, theme))
  for (const mark of marks) {
    if (mark.kind === 'path') shapes.push(...pathShapes(mark, view, theme))
    if (mark.kind === 'dot') shapes.push(dotShape(mark, view, theme))
  }
  for (const mark of marks) {
    if (mark.kind === 'text') words.push(...textShapes(mark, view, theme, space))
    if (mark.kind === 'dimension') words.push(...dimensionShapes(mark, view, theme, space))
  }
  return svgRoot(view.width, view.height, [...shapes, ...words], options.title)
}

const groundOf = (view: View, theme: Theme): SvgElement =>
  el('rect', { x: 0, y: 0, width: view.width, height: view.height, fill: theme.inks.paper })

function pathShapes(mark: PathMark, view: View, theme: Theme): SvgElement[] {
  const points = mark.points.map((p) => toPicture(view, p))
  const d = pathData(points, mark.closed)
  const unit = theme.stroke
  const shape = el('path', {
    d,
    fill: mark.fill ? theme.inks[mark.fill] : 'none',
    'fill-opacity': mark.fill ? mark.fillOpacity : undefined,
    stroke: mark.stroke ? theme.inks[mark.stroke] : 'none',
    'stroke-width': mark.stroke ? (mark.width ?? 1) * unit : undefined,
    'stroke-dasharray': mark.dash?.map((n) => n * unit).join(' '),
    'stroke-linejoin': 'round',
    'stroke-linecap': mark.dash ? 'butt' : 'round',
    'data-ref': mark.ref,
  })
  const hatch = mark.hatch ? [hatchShape(points, theme.inks[mark.hatch], unit, mark.ref)] : []
  const grab = mark.grab && theme.medium === 'screen' ? [grabShape(d, mark.ref)] : []
  return [shape, ...hatch, ...grab]
}

const grabShape = (d: string, ref: string | undefined): SvgElement =>
  el('path', {
    d,
    fill: 'none',
    stroke: 'transparent',
    'stroke-width': 14,
    'data-ref': ref,
    'data-grab': 'yes',
  })

/** Slanting lines inside a closed shape, cut to it by the even-odd rule, so that no pattern support is needed. */
function hatchShape(points: [number, number][], stroke: string, unit: number, ref?: string): SvgElement {
  const lines = hatchLines(points, unit * 5)
  const d = lines.map((line) => pathData(line)).join('')
  return el('path', { d: d || 'M0 0', fill: 'none', stroke, 'stroke-width': unit * 0.4, 'data-ref': ref })
}

/** The parts of 45-degree lines, `step` apart, that lie inside a polygon. */
export function hatchLines(points: readonly Point[], step: number): [Point, Point][] {
  const along = points.map(([x, y]) => x + y)
  const [low, high] = [Math.min(...along), Math.max(...along)]
  const lines: [Point, Point][] = []
  const count = Math.min(2000, Math.floor((high - low) / step))
  for (let i = 1; i <= count; i++) lines.push(...crossings(points, low + i * step))
  return lines
}

/** Where the line x + y = c runs inside a polygon. */
function crossings(points: readonly Point[], c: number): [Point, Point][] {
  const xs: number[] = []
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length]!
    const [sa, sb] = [a[0] + a[1] - c, b[0] + b[1] - c]
    if (sa < 0 !== sb < 0) xs.push(a[0] + ((b[0] - a[0]) * sa) / (sa - sb))
  })
  xs.sort((m, n) => m - n)
  const pairs: [Point, Point][] = []
  for (let i = 0; i + 1 < xs.length; i += 2) pairs.push([at(xs[i]!, c), at(xs[i + 1]!, c)])
  return pairs
}

const at = (x: number, c: number): Point => [x, c - x]

function dotShape(mark: DotMark, view: View, theme: Theme): SvgElement {
  const [cx, cy] = toPicture(view, mark.at)
  const dot = el('circle', {
    cx,
    cy,
    r: mark.radius,
    fill: mark.fill ? theme.inks[mark.fill] : 'none',
    stroke: mark.stroke ? theme.inks[mark.stroke] : undefined,
    'stroke-width': mark.stroke ? theme.stroke : undefined,
    'data-ref': mark.ref,
  })
  if (!mark.grab || theme.medium !== 'screen') return dot
  const area = {
    cx,
    cy,
    r: Math.max(10, mark.radius),
    fill: 'transparent',
    'data-ref': mark.ref,
    'data-grab': 'yes',
  }
  return el('g', {}, dot, el('circle', area))
}
