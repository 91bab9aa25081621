/** Plots: axes with units, lines that differ in dash too, markers, bands, limits, a cursor and a legend. */
import { scaleLinear } from 'd3-scale'
import { LabelSpace } from './labels'
import { el, pathData, round, type SvgElement, svgRoot } from './svg'
import { textWidth } from './text-size'
import { type Ink, screenTheme, type Theme } from './theme'
import type { Point, Window } from './view'

export interface PlotAxis {
  label: string
  unit: string
  /** Absent: what the lines span. */
  range?: Window
  format?: (value: number) => string
}

export interface PlotLine {
  name: string
  points: Point[]
  ink?: Ink
  dash?: [number, number]
  width?: number
}

export interface PlotInput {
  x: PlotAxis
  y: PlotAxis
  lines: PlotLine[]
  markers?: { at: Point; text?: string; ink?: Ink; ref?: string }[]
  /** A strip between two values of y, as between a low and a high figure. */
  bands?: { name?: string; points: { x: number; low: number; high: number }[]; ink?: Ink }[]
  /** A limit to stay under or over. */
  limits?: { value: number; text: string; ink?: Ink }[]
  /** Where the cursor stands, in x. */
  cursor?: number
  title?: string
}

export interface Plot {
  picture: SvgElement
  /** x and y under a picture point, for pointers. */
  at(point: Point): Point
}

interface Frame {
  left: number
  right: number
  top: number
  bottom: number
  x: ReturnType<typeof scaleLinear>
  y: ReturnType<typeof scaleLinear>
}

/** A plot, width by height; `theme.textSize` decides how far away it can be read. */
export function plot(input: PlotInput, width: number, height: number, theme: Theme = screenTheme): Plot {
  const frame = plotFrame(input, width, height, theme)
  const space = new LabelSpace(width, height)
  const nodes = [
    ...axes(input, frame, theme, space),
    ...bands(input, frame, theme),
    ...limits(input, frame, theme, space),
    ...lines(input, frame, theme),
    ...cursor(input, frame, theme),
    ...markers(input, frame, theme, space),
    ...legend(input, frame, theme),
  ]
  return {
    picture: svgRoot(width, height, nodes, input.title),
    at: ([px, py]) => [frame.x.invert(px), frame.y.invert(py)],
  }
}

const finite = (values: number[]): number[] => values.filter((v) => Number.isFinite(v))

function spanned(values: number[], asked?: Window): [number, number] {
  if (asked) return [asked.low, asked.high]
  const known = finite(values)
  if (known.length === 0) return [0, 1]
  const [low, high] = [Math.min(...known), Math.max(...known)]
  return low === high ? [low - 1, high + 1] : [low, high]
}

function plotFrame(input: PlotInput, width: number, height: number, theme: Theme): Frame {
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
  const [right, bottom] = [width - size * 1.2, height - size * 3]
  const x = scaleLinear().domain(spanned(xs, input.x.range)).range([left, right])
  return { left, right, top, bottom, x, y: y.range([bottom, top]) }
}

function axes(input: PlotInput, f: Frame, theme: Theme, space: LabelSpace): SvgElement[] {
  const size = theme.textSize
  const { quiet, line, ink } = theme.inks
  const nodes: SvgElement[] = []
  const across = Math.max(2, Math.floor((f.right - f.left) / (size * 6)))
  const up = Math.max(2, Math.floor((f.bottom - f.top) / (size * 3)))
  for (const t of f.x.ticks(across)) {
    const x = Number(f.x(t))
    nodes.push(
      el('path', {
        d: pathData([
          [x, f.top],
          [x, f.bottom],
        ]),
        stroke: line,
        'stroke-width': theme.stroke * 0.4,
      }),
    )
    const text = (input.x.format ?? String)(round(t))
    const placed = space.place({
      at: [x, f.bottom + size * 1.2],
      text,
      size,
      bold: false,
      anchor: 'middle',
      optional: true,
    })
    if (placed)
      nodes.push(
        el(
          'text',
          { x, y: f.bottom + size * 1.2, 'font-size': size, 'text-anchor': 'middle', fill: quiet },
          text,
        ),
      )
  }
  for (const t of f.y.ticks(up)) {
    const y = Number(f.y(t))
    nodes.push(
      el('path', {
        d: pathData([
          [f.left, y],
          [f.right, y],
        ]),
        stroke: line,
        'stroke-width': theme.stroke * 0.4,
      }),
    )
    const text = (input.y.format ?? String)(round(t))
    nodes.push(
      el(
        'text',
        { x: f.left - size * 0.5, y: y + size * 0.35, 'font-size': size, 'text-anchor': 'end', fill: quiet },
        text,
      ),
    )
  }
  const frame = pathData([
    [f.left, f.top],
    [f.left, f.bottom],
    [f.right, f.bottom],
  ])
  nodes.push(el('path', { d: frame, fill: 'none', stroke: ink, 'stroke-width': theme.stroke * 0.7 }))
  const under = { x: f.right, y: f.bottom + size * 2.5, 'font-size': size, 'text-anchor': 'end', fill: ink }
  nodes.push(el('text', under, axisName(input.x)))
  nodes.push(el('text', { x: 2, y: size, 'font-size': size, fill: ink }, axisName(input.y)))
  return nodes
}

const axisName = (axis: PlotAxis): string => (axis.unit ? `${axis.label}, ${axis.unit}` : axis.label)

const place = (f: Frame, [x, y]: Point): [number, number] => [Number(f.x(x)), Number(f.y(y))]

/** Lines break where a value is not known. */
function lines(input: PlotInput, f: Frame, theme: Theme): SvgElement[] {
  return input.lines.map((l, i) => {
    const d = pieces(l.points)
      .map((p) => pathData(p.map((q) => place(f, q))))
      .join('')
    const style = lineStyle(l, i, theme)
    return el('path', { d: d || 'M0 0', fill: 'none', ...style })
  })
}

function pieces(points: Point[]): Point[][] {
  const found: Point[][] = [[]]
  for (const p of points) {
    if (Number.isFinite(p[0]) && Number.isFinite(p[1])) found.at(-1)!.push(p)
    else if (found.at(-1)!.length > 0) found.push([])
  }
  return found.filter((p) => p.length > 1)
}

const dashes: ([number, number] | undefined)[] = [undefined, [6, 3], [2, 2], [9, 3]]
const inkOrder: Ink[] = ['ink', 'accent', 'fails', 'ghost']

function lineStyle(l: PlotLine, i: number, theme: Theme) {
  const dash = l.dash ?? dashes[i % dashes.length]
  return {
    stroke: theme.inks[l.ink ?? inkOrder[i % inkOrder.length]!],
    'stroke-width': theme.stroke * (l.width ?? 1.2),
    'stroke-dasharray': dash?.map((n) => n * theme.stroke).join(' '),
    'stroke-linejoin': 'round',
  }
}

function bands(input: PlotInput, f: Frame, theme: Theme): SvgElement[] {
  return (input.bands ?? []).map((b) => {
    const over = b.points.map((p) => place(f, [p.x, p.high]))
    const under = b.points.map((p) => place(f, [p.x, p.low])).reverse()
    const fill = theme.inks[b.ink ?? 'accent']
    return el('path', { d: pathData([...over, ...under], true), fill, 'fill-opacity': 0.16 })
  })
}

function limits(input: PlotInput, f: Frame, theme: Theme, space: LabelSpace): SvgElement[] {
  return (input.limits ?? []).flatMap((l) => {
    const y = Number(f.y(l.value))
    const stroke = theme.inks[l.ink ?? 'fails']
    const size = theme.textSize
    const request = {
      at: [f.right - 4, y - size * 0.4] as Point,
      text: l.text,
      size,
      bold: false,
      dodge: 'down' as const,
    }
    const placed = space.place({ ...request, anchor: 'end', optional: false })
    const [x, at] = placed?.at ?? request.at
    return [
      el('path', {
        d: pathData([
          [f.left, y],
          [f.right, y],
        ]),
        stroke,
        'stroke-width': theme.stroke,
        'stroke-dasharray': '8 4',
      }),
      el('text', { x, y: at, 'font-size': size, 'text-anchor': 'end', fill: stroke }, l.text),
    ]
  })
}

function cursor(input: PlotInput, f: Frame, theme: Theme): SvgElement[] {
  if (input.cursor === undefined || !Number.isFinite(input.cursor)) return []
  const x = Number(f.x(input.cursor))
  return [
    el('path', {
      d: pathData([
        [x, f.top],
        [x, f.bottom],
      ]),
      stroke: theme.inks.accent,
      'stroke-width': theme.stroke,
    }),
  ]
}

function markers(input: PlotInput, f: Frame, theme: Theme, space: LabelSpace): SvgElement[] {
  const size = theme.textSize
  return (input.markers ?? []).flatMap((m) => {
    const [cx, cy] = place(f, m.at)
    const stroke = theme.inks[m.ink ?? 'accent']
    const dot = el('circle', {
      cx,
      cy,
      r: theme.stroke * 2.4,
      fill: theme.inks.panel,
      stroke,
      'stroke-width': theme.stroke,
      'data-ref': m.ref,
    })
    if (!m.text) return [dot]
    const placed = space.place({
      at: [cx, cy - size * 0.9],
      text: m.text,
      size,
      bold: true,
      anchor: 'middle',
      dodge: 'up',
      optional: false,
    })
    const [x, y] = placed?.at ?? [cx, cy]
    return [
      dot,
      el(
        'text',
        { x, y, 'font-size': size, 'font-weight': 'bold', 'text-anchor': 'middle', fill: stroke },
        m.text,
      ),
    ]
  })
}

interface LegendEntry {
  name: string
  style: ReturnType<typeof lineStyle>
  x: number
}

/** Legend entries in as many rows as they need; none for a single line without a name. */
function legendRows(input: PlotInput, width: number, size: number): { index: number; x: number }[][] {
  const rows: { index: number; x: number }[][] = []
  let x = Infinity
  input.lines.forEach((l, index) => {
    if (!l.name) return
    const needed = size * 3 + textWidth(l.name, size) + size
    if (x + needed > width) {
      rows.push([])
      x = 0
    }
    rows.at(-1)!.push({ index, x })
    x += needed
  })
  return rows
}

function legend(input: PlotInput, f: Frame, theme: Theme): SvgElement[] {
  const size = theme.textSize
  const width = f.right - f.left
  return legendRows(input, width, size).flatMap((row, r) => {
    const y = size * (2.2 + r * 1.5)
    return row.flatMap(({ index, x }) =>
      legendEntry(
        {
          name: input.lines[index]!.name,
          style: lineStyle(input.lines[index]!, index, theme),
          x: f.left + x,
        },
        y,
        theme,
      ),
    )
  })
}

function legendEntry(entry: LegendEntry, y: number, theme: Theme): SvgElement[] {
  const size = theme.textSize
  const d = pathData([
    [entry.x, y],
    [entry.x + size * 2.2, y],
  ])
  return [
    el('path', { d, fill: 'none', ...entry.style }),
    el(
      'text',
      { x: entry.x + size * 2.7, y: y + size * 0.35, 'font-size': size, fill: theme.inks.ink },
      entry.name,
    ),
  ]
}
