/** Forces at a point drawn head to tail, to scale, each with its size: what a steep tie-back does is seen at once. */
import { LabelSpace } from './labels'
import { el, pathData, type SvgElement, svgRoot } from './svg'
import { type Ink, screenTheme, type Theme } from './theme'
import { fitView, type Point, toPicture, type View } from './view'

export interface TriangleForce {
  /** As it stands beside the arrow, with its value and unit. */
  text: string
  /** N, across and up. */
  force: Point
  ink?: Ink
}

/** The polygon of forces from the first on; where they are in balance it closes. */
export function forceTriangle(
  forces: TriangleForce[],
  width: number,
  height: number,
  theme: Theme = screenTheme,
  /** The longest arrow that must fit, N; keeps the scale while a force is dragged. */
  longest?: number,
): SvgElement {
  const corners = runningSum(forces.map((f) => f.force))
  const view = triangleView(corners, width, height, theme, longest)
  const space = new LabelSpace(width, height)
  const nodes = forces.flatMap((f, i) => arrow(f, corners[i]!, corners[i + 1]!, view, theme, space))
  return svgRoot(width, height, nodes, forces.map((f) => f.text).join(', '))
}

function runningSum(forces: Point[]): Point[] {
  const corners: Point[] = [[0, 0]]
  for (const [x, y] of forces) {
    const [px, py] = corners.at(-1)!
    corners.push([px + x, py + y])
  }
  return corners
}

function triangleView(corners: Point[], width: number, height: number, theme: Theme, longest?: number): View {
  const span = (k: 0 | 1) => {
    const values = corners.map((c) => c[k])
    const [low, high] = [Math.min(...values), Math.max(...values)]
    const spare = Math.max(0, (longest ?? 0) - (high - low)) / 2
    return { low: low - spare, high: high + spare }
  }
  const side = theme.textSize * 5
  const margins = { left: side, right: side, top: theme.textSize * 2, bottom: theme.textSize * 2 }
  return fitView(width, height, span(0), span(1), margins, true)
}

function arrow(
  f: TriangleForce,
  from: Point,
  to: Point,
  view: View,
  theme: Theme,
  space: LabelSpace,
): SvgElement[] {
  const [a, b] = [toPicture(view, from), toPicture(view, to)]
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  const stroke = theme.inks[f.ink ?? 'ink']
  const size = theme.textSize
  const middle: Point = [(a[0] + b[0]) / 2 + size * 0.6, (a[1] + b[1]) / 2 - size * 0.4]
  const placed = space.place({
    at: middle,
    text: f.text,
    size,
    bold: true,
    anchor: 'start',
    dodge: 'down',
    optional: false,
  })
  const [x, y] = placed?.at ?? middle
  const word = el('text', { x, y, 'font-size': size, 'font-weight': 'bold', fill: stroke }, f.text)
  if (length < 1) return [word]
  const shaft = el('path', { d: pathData([a, b]), fill: 'none', stroke, 'stroke-width': theme.stroke * 1.4 })
  return [shaft, arrowHead(a, b, length, stroke, theme.stroke), word]
}

function arrowHead(a: Point, b: Point, length: number, fill: string, stroke: number): SvgElement {
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
  const size = Math.min(stroke * 6, length / 2)
  const base: Point = [b[0] - ux * size, b[1] - uy * size]
  const wing = size * 0.4
  const points: Point[] = [
    b,
    [base[0] - uy * wing, base[1] + ux * wing],
    [base[0] + uy * wing, base[1] - ux * wing],
  ]
  return el('path', { d: pathData(points, true), fill })
}
