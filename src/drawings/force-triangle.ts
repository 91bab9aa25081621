/** Forces at a point drawn head to tail, to scale, each with its size: what a steep tie-back does is seen at once. */
import { LabelSpace } from './labels'
import { el, pathData, type SvgElement, svgRoot } from './svg'
import { textWidth } from './text-size'
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
  const widest = Math.max(0, ...forces.map((f) => textWidth(f.text, theme.textSize, true)))
  const side = Math.min(widest + theme.textSize, width * 0.3)
  const view = triangleView(corners, width, height, theme, side, longest)
  const space = new LabelSpace(width, height)
  const middle = centre(corners, view)
  const nodes = forces.flatMap((f, i) => arrow(f, corners[i]!, corners[i + 1]!, view, theme, space, middle))
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

/** The middle of the figure in the picture: words stand on the far side of their arrows from it. */
function centre(corners: Point[], view: View): Point {
  const seen = corners.slice(0, -1).map((c) => toPicture(view, c))
  const mean = (k: 0 | 1): number => seen.reduce((sum, p) => sum + p[k], 0) / Math.max(1, seen.length)
  return [mean(0), mean(1)]
}

function triangleView(
  corners: Point[],
  width: number,
  height: number,
  theme: Theme,
  side: number,
  longest?: number,
): View {
  const span = (k: 0 | 1) => {
    const values = corners.map((c) => c[k])
    const [low, high] = [Math.min(...values), Math.max(...values)]
    const spare = Math.max(0, (longest ?? 0) - (high - low)) / 2
    return { low: low - spare, high: high + spare }
  }
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
  inside: Point,
): SvgElement[] {
  const [a, b] = [toPicture(view, from), toPicture(view, to)]
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  const stroke = theme.inks[f.ink ?? 'ink']
  const size = theme.textSize
  const outside = wordsPlace(a, b, length, inside, size)
  const placed = space.place({ ...outside, text: f.text, size, bold: true, optional: false })
  const [x, y] = placed?.at ?? outside.at
  const looks = { 'font-size': size, 'font-weight': 'bold', 'text-anchor': outside.anchor, fill: stroke }
  const word = el('text', { x, y, ...looks }, f.text)
  if (length < 1) return [word]
  const shaft = el('path', { d: pathData([a, b]), fill: 'none', stroke, 'stroke-width': theme.stroke * 1.4 })
  return [shaft, arrowHead(a, b, length, stroke, theme.stroke), word]
}

/** Beside the middle of an arrow, away from the middle of the figure. */
function wordsPlace(a: Point, b: Point, length: number, inside: Point, size: number) {
  const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
  const across: Point = length < 1 ? [0, -1] : [(a[1] - b[1]) / length, (b[0] - a[0]) / length]
  const away = across[0] * (middle[0] - inside[0]) + across[1] * (middle[1] - inside[1]) < 0 ? -1 : 1
  const [nx, ny] = [across[0] * away, across[1] * away]
  const at: Point = [middle[0] + nx * size * 0.6, middle[1] + ny * size * 0.9 + size * 0.35]
  const anchor: 'start' | 'middle' | 'end' = nx > 0.4 ? 'start' : nx < -0.4 ? 'end' : 'middle'
  return { at, anchor, dodge: ny < 0 ? ('up' as const) : ('down' as const) }
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
