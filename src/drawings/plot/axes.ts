/** Scales and their axes: ticks, grid, names with units. */
import { scaleLinear } from 'd3-scale'
import type { LabelSpace } from '../labels'
import { el, pathData, round, type SvgElement } from '../svg'
import { textWidth } from '../text-size'
import type { Theme } from '../theme'
import type { Point, Window } from '../view'
import type { Frame, PlotAxis, PlotInput } from './input'
import { legendRows } from './legend'

const finite = (values: number[]): number[] => values.filter((v) => Number.isFinite(v))

function spanned(values: number[], asked?: Window): [number, number] {
  if (asked) return [asked.low, asked.high]
  const known = finite(values)
  if (known.length === 0) return [0, 1]
  const [low, high] = [Math.min(...known), Math.max(...known)]
  return low === high ? [low - 1, high + 1] : [low, high]
}

export function plotFrame(input: PlotInput, width: number, height: number, theme: Theme): Frame {
  const size = theme.textSize
  const xs = input.lines.flatMap((l) => l.points.map((p) => p[0]))
  const ys = [
    ...input.lines.flatMap((l) => l.points.map((p) => p[1])),
    ...(input.limits ?? []).map((l) => l.value),
    ...(input.bands ?? []).flatMap((b) => b.points.flatMap((p) => [p.low, p.high])),
  ]
  const format = input.y.format ?? String
  const y = scaleLinear().domain(spanned(ys, input.y.range))
  if (!input.y.range) y.nice(5)
  const widest = Math.max(...y.ticks(5).map((t) => textWidth(format(round(t)), size)), size)
  const rows = legendRows(input, width - widest - size * 3, size).length
  const left = widest + size * 1.2
  const top = size * (1.8 + rows * 1.5)
  const [right, bottom] = [width - size * 1.2, height - size * 3.4]
  const x = scaleLinear().domain(spanned(xs, input.x.range)).range([left, right])
  return { left, right, top, bottom, x, y: y.range([bottom, top]) }
}

export function axes(input: PlotInput, f: Frame, theme: Theme, space: LabelSpace): SvgElement[] {
  const size = theme.textSize
  const across = Math.max(2, Math.floor((f.right - f.left) / (size * 6)))
  const up = Math.max(2, Math.floor((f.bottom - f.top) / (size * 3)))
  const corner: Point[] = [
    [f.left, f.top],
    [f.left, f.bottom],
    [f.right, f.bottom],
  ]
  const { ink } = theme.inks
  const under = { x: f.right, y: f.bottom + size * 2.5, 'font-size': size, 'text-anchor': 'end', fill: ink }
  return [
    ...f.x.ticks(across).flatMap((t) => tickAcross(input.x, f, t, theme, space)),
    ...f.y.ticks(up).flatMap((t) => tickUp(input.y, f, t, theme)),
    el('path', { d: pathData(corner), fill: 'none', stroke: ink, 'stroke-width': theme.stroke * 0.7 }),
    el('text', under, axisName(input.x)),
    el('text', { x: 2, y: size, 'font-size': size, fill: ink }, axisName(input.y)),
  ]
}

const gridLine = (from: Point, to: Point, theme: Theme): SvgElement =>
  el('path', { d: pathData([from, to]), stroke: theme.inks.line, 'stroke-width': theme.stroke * 0.4 })

function tickAcross(axis: PlotAxis, f: Frame, t: number, theme: Theme, space: LabelSpace): SvgElement[] {
  const size = theme.textSize
  const [x, y] = [Number(f.x(t)), f.bottom + size * 1.2]
  const grid = gridLine([x, f.top], [x, f.bottom], theme)
  const text = (axis.format ?? String)(round(t))
  const placed = space.place({ at: [x, y], text, size, bold: false, anchor: 'middle', optional: true })
  const look = { x, y, 'font-size': size, 'text-anchor': 'middle', fill: theme.inks.quiet }
  return placed ? [grid, el('text', look, text)] : [grid]
}

function tickUp(axis: PlotAxis, f: Frame, t: number, theme: Theme): SvgElement[] {
  const size = theme.textSize
  const y = Number(f.y(t))
  const at = { x: f.left - size * 0.5, y: y + size * 0.35 }
  const look = { ...at, 'font-size': size, 'text-anchor': 'end', fill: theme.inks.quiet }
  return [gridLine([f.left, y], [f.right, y], theme), el('text', look, (axis.format ?? String)(round(t)))]
}

const axisName = (axis: PlotAxis): string => (axis.unit ? `${axis.label}, ${axis.unit}` : axis.label)
