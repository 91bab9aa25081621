/** Pieces that the pictures of the lessons share: arrows to scale, figures, distances. */
import { el, pathData, type SvgElement } from '../svg'
import type { Ink, Theme } from '../theme'
import { type Point, toPicture, type View } from '../view'

/** A stroke through model points. */
export const stroke = (
  view: View,
  points: Point[],
  theme: Theme,
  ink: Ink,
  width = 1,
  dash?: string,
): SvgElement =>
  el('path', {
    d: pathData(points.map((p) => toPicture(view, p))),
    fill: 'none',
    stroke: theme.inks[ink],
    'stroke-width': theme.stroke * width,
    'stroke-dasharray': dash,
    'stroke-linejoin': 'round',
    'stroke-linecap': 'round',
  })

/** A filled shape with model corners. */
export const shape = (view: View, points: Point[], theme: Theme, ink: Ink, opacity = 1): SvgElement =>
  el('path', {
    d: pathData(
      points.map((p) => toPicture(view, p)),
      true,
    ),
    fill: theme.inks[ink],
    'fill-opacity': opacity,
    stroke: theme.inks.ink,
    'stroke-width': theme.stroke * 0.5,
  })

export function words(
  at: Point,
  text: string,
  theme: Theme,
  ink: Ink = 'ink',
  anchor = 'start',
  bold = false,
): SvgElement {
  const halo = { 'paint-order': 'stroke', stroke: theme.inks.paper, 'stroke-width': theme.textSize * 0.3 }
  return el(
    'text',
    {
      x: at[0],
      y: at[1],
      'font-size': theme.textSize,
      'font-weight': bold ? 'bold' : undefined,
      'text-anchor': anchor,
      'stroke-linejoin': 'round',
      fill: theme.inks[ink],
      ...halo,
    },
    text,
  )
}

export interface ForceDrawn {
  /** Where it acts, picture units, and its way; need not be of unit length. */
  at: Point
  way: Point
  newtons: number
  text: string
  ink?: Ink
  /** Where its words stand beside its tip. */
  anchor?: 'start' | 'middle' | 'end'
}

/** An arrow as long as the force is great; `scale` is picture units for one newton. Way has y upwards. */
export function forceArrow(f: ForceDrawn, scale: number, theme: Theme): SvgElement[] {
  const size = Math.hypot(f.way[0], f.way[1]) || 1
  const [ux, uy] = [f.way[0] / size, -f.way[1] / size]
  const long = f.newtons * scale
  const tip: Point = [f.at[0] + ux * long, f.at[1] + uy * long]
  const head = Math.min(theme.stroke * 7, long / 2)
  const base: Point = [tip[0] - ux * head, tip[1] - uy * head]
  const color = theme.inks[f.ink ?? 'accent']
  const wing = head * 0.4
  const corners: Point[] = [
    tip,
    [base[0] - uy * wing, base[1] + ux * wing],
    [base[0] + uy * wing, base[1] - ux * wing],
  ]
  // Beside a level arrow the words stand above it, or they would lie on the rope.
  const up = Math.abs(uy) < 0.4 ? theme.textSize * 0.95 : 0
  const at: Point = [
    tip[0] + ux * theme.textSize * 0.5,
    tip[1] + uy * theme.textSize * 0.9 + theme.textSize * 0.35 - up,
  ]
  return [
    el('path', {
      d: pathData([f.at, base]),
      fill: 'none',
      stroke: color,
      'stroke-width': theme.stroke * 2.4,
    }),
    el('path', { d: pathData(corners, true), fill: color }),
    words(
      at,
      f.text,
      theme,
      f.ink ?? 'accent',
      f.anchor ?? (ux < -0.3 ? 'end' : ux > 0.3 ? 'start' : 'middle'),
      true,
    ),
  ]
}

/** A bar that says how long a force is drawn, at the lower left. */
export function forceScale(
  newtons: number,
  text: string,
  scale: number,
  height: number,
  theme: Theme,
): SvgElement[] {
  const [x, y] = [theme.textSize, height - theme.textSize * 1.2]
  const d = `M${x} ${y - 4}V${y + 4}M${x} ${y}H${x + newtons * scale}M${x + newtons * scale} ${y - 4}V${y + 4}`
  return [
    el('path', { d, fill: 'none', stroke: theme.inks.quiet, 'stroke-width': theme.stroke }),
    words([x, y - theme.textSize * 0.7], `Forces to scale: this is ${text}`, theme, 'quiet'),
  ]
}

/** A distance up and down at x, with its words to the right. */
export function upright(
  view: View,
  x: number,
  from: number,
  to: number,
  text: string,
  theme: Theme,
  ink: Ink = 'ink',
): SvgElement[] {
  const [px, a] = toPicture(view, [x, from])
  const b = toPicture(view, [x, to])[1]
  const d = `M${px - 5} ${a}H${px + 5}M${px} ${a}V${b}M${px - 5} ${b}H${px + 5}`
  return [
    el('path', { d, fill: 'none', stroke: theme.inks[ink], 'stroke-width': theme.stroke }),
    words([px + 9, (a + b) / 2 + theme.textSize * 0.35], text, theme, ink),
  ]
}

/** A plain figure to scale with its D-ring `dRing` m over its feet. */
export function person(view: View, feet: Point, dRing: number, theme: Theme, ghost = false): SvgElement[] {
  const tall = dRing / 0.82
  const at = (x: number, y: number): Point => [feet[0] + x * tall, feet[1] + y * tall]
  const ink: Ink = ghost ? 'ghost' : 'ink'
  const [hx, hy] = toPicture(view, at(0, 0.93))
  const limb = 1.6 + tall * view.scaleX * 0.03
  const line = (points: Point[]): SvgElement => stroke(view, points, theme, ink, limb / theme.stroke)
  return [
    el('circle', { cx: hx, cy: hy, r: 0.068 * tall * view.scaleX, fill: theme.inks[ink] }),
    line([at(0, 0.84), at(0, 0.5)]),
    line([at(0, 0.5), at(-0.09, 0.26), at(-0.1, 0)]),
    line([at(0, 0.5), at(0.09, 0.26), at(0.1, 0)]),
    line([at(0, 0.8), at(-0.13, 0.62), at(-0.1, 0.44)]),
    line([at(0, 0.8), at(0.13, 0.62), at(0.1, 0.44)]),
  ]
}
