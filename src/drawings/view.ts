/** How model metres become picture units (px on screen, points on paper): x to the right, y up in the model. */
export type Point = readonly [number, number]

export interface View {
  width: number
  height: number
  /** Picture units per metre, across and upwards; both positive. */
  scaleX: number
  scaleY: number
  /** Model point that lies at the picture's left and top edge. */
  left: number
  top: number
}

export interface Window {
  low: number
  high: number
}

/** Points per metre on paper at a scale of 1 to n. */
export const pointsPerMetre = (n: number): number => (72 / 0.0254) * (1 / n)

export const viewX = (view: View, x: number): number => (x - view.left) * view.scaleX
const viewY = (view: View, y: number): number => (view.top - y) * view.scaleY
export const toPicture = (view: View, [x, y]: Point): [number, number] => [viewX(view, x), viewY(view, y)]

/** The model point under a picture point: what a pointer means. */
export const toModel = (view: View, [px, py]: Point): [number, number] => [
  view.left + px / view.scaleX,
  view.top - py / view.scaleY,
]

export interface Margins {
  left: number
  right: number
  top: number
  bottom: number
}

/** A view that fits a model window into a picture; `equal` keeps one scale for both and centres what is left over. */
export function fitView(
  width: number,
  height: number,
  x: Window,
  y: Window,
  margins: Margins,
  equal = false,
): View {
  const inner = [width - margins.left - margins.right, height - margins.top - margins.bottom] as const
  const spans = [Math.max(x.high - x.low, 1e-6), Math.max(y.high - y.low, 1e-6)] as const
  let scaleX = Math.max(inner[0], 1) / spans[0]
  let scaleY = Math.max(inner[1], 1) / spans[1]
  if (equal) scaleX = scaleY = Math.min(scaleX, scaleY)
  const spareX = (Math.max(inner[0], 1) - spans[0] * scaleX) / 2
  const spareY = (Math.max(inner[1], 1) - spans[1] * scaleY) / 2
  const left = x.low - (margins.left + spareX) / scaleX
  return { width, height, scaleX, scaleY, left, top: y.high + (margins.top + spareY) / scaleY }
}

/** A view at a stated paper scale (1 to n), as large as its content needs. */
export function scaledView(n: number, x: Window, y: Window, margins: Margins): View {
  const scale = pointsPerMetre(n)
  return {
    width: (x.high - x.low) * scale + margins.left + margins.right,
    height: (y.high - y.low) * scale + margins.top + margins.bottom,
    scaleX: scale,
    scaleY: scale,
    left: x.low - margins.left / scale,
    top: y.high + margins.top / scale,
  }
}

/** The usual drawing scales, and the largest picture of them that fits the room there is. */
const SCALES = [10, 20, 25, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 2000, 5000, 10000]

export function paperScale(x: Window, y: Window, width: number, height: number, margins: Margins): number {
  const across = width - margins.left - margins.right
  const up = height - margins.top - margins.bottom
  const fits = (n: number): boolean =>
    (x.high - x.low) * pointsPerMetre(n) <= across && (y.high - y.low) * pointsPerMetre(n) <= up
  return SCALES.find(fits) ?? SCALES.at(-1)!
}
