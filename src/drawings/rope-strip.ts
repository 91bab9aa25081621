/**
 * The rope laid out before tensioning, as a crew sees it on the girder: which part follows which, where the rope is
 * marked and cut, and how far the eye lies from its stanchion. Not to scale: lengths stand on it as numbers.
 */
import { el, type SvgElement, svgRoot } from './svg'
import { textWidth } from './text-size'
import { paperTheme, type Theme } from './theme'

export interface RopeStripInput {
  /** Ids of the stanchions, from the start of the line on; fewer than two give an empty picture. */
  stanchions: readonly string[]
  /** The end at which eye, tensioner and absorber are. */
  tensionerAt: 'start' | 'end'
  absorber: boolean
  /** Names of the parts, and the lengths as they are to be read. */
  words: { anchor: string; clamp: string; eye: string; tensioner: string; absorber: string }
  /** Between the eye and the end of the tail. */
  cut: string
  mark: string
  eyeOffset: string
  notToScale: string
}

const LEVEL = 30
const BASE = 52

/** A picture of `width` picture units; its height follows from what stands on it. */
export function ropeStrip(input: RopeStripInput, width: number, theme: Theme = paperTheme): SvgElement {
  const height = 87
  const count = input.stanchions.length
  if (count < 2) return svgRoot(width, height, [])
  const size = theme.textSize
  const pad = 26
  const run = width - 2 * pad
  // Along the rope from the clamp's end to the tensioner's; mirrored where the tensioner is at the start.
  const flip = input.tensionerAt === 'start'
  const x = (share: number): number => pad + run * (flip ? 1 - share : share)
  const at = { clamp: 0.075, tail: 0.025, eye: 0.8, tensioner: 0.86, absorber: 0.93, end: 1 }
  const ink = theme.inks.ink
  const pen = { stroke: ink, fill: 'none', 'stroke-width': theme.stroke }
  const line = (x1: number, y1: number, x2: number, y2: number, more = {}): SvgElement =>
    el('line', { x1, y1, x2, y2, ...pen, ...more })
  const text = (tx: number, y: number, t: string, anchor: string, bold = false): SvgElement =>
    el(
      'text',
      {
        x: inside(tx, t, anchor, size, bold, width),
        y,
        fill: ink,
        'font-size': size,
        'text-anchor': 'start',
        'font-weight': bold ? 700 : undefined,
      },
      t,
    )
  const dimension = (from: number, to: number, y: number, t: string): SvgElement[] => {
    const [a, b] = [Math.min(x(from), x(to)), Math.max(x(from), x(to))]
    return [
      line(a, y, b, y, { 'stroke-width': theme.stroke * 0.6 }),
      ...[a, b].map((e) => line(e, y - 3, e, y + 3, { 'stroke-width': theme.stroke * 0.6 })),
      ...plated((a + b) / 2, y + size * 0.36, t, size, theme),
    ]
  }
  const box = (share: number, w: number, h: number, fill: string): SvgElement =>
    el('rect', { x: x(share) - w / 2, y: LEVEL - h / 2, width: w, height: h, ...pen, fill })
  const order = flip ? [...input.stanchions].reverse() : [...input.stanchions]
  const posts = order.map((id, i) => {
    // Intermediate stanchions stand between clamp and eye; only their order is meant.
    const share = i === 0 ? 0 : i === count - 1 ? 1 : 0.075 + (0.725 * i) / (count - 1)
    return { id, share, end: i === 0 || i === count - 1 }
  })
  const crowded = count > 14
  return svgRoot(width, height, [
    line(pad - 14, BASE, width - pad + 14, BASE, { 'stroke-width': theme.stroke * 1.6 }),
    ...posts.flatMap((p) => [
      line(x(p.share), BASE, x(p.share), LEVEL - 4, { 'stroke-width': theme.stroke * (p.end ? 2.4 : 1.4) }),
      ...(p.end || !crowded ? [text(x(p.share), BASE + 9, p.id, 'middle', true)] : []),
    ]),
    line(x(0), LEVEL, x(at.eye), LEVEL, { 'stroke-width': theme.stroke * 1.3 }),
    // The tail hangs beside the rope, past the clamp.
    line(x(at.clamp), LEVEL + 4, x(at.tail), LEVEL + 9, { 'stroke-width': theme.stroke * 1.3 }),
    el('circle', { cx: x(at.eye), cy: LEVEL, r: 4, ...pen, 'stroke-width': theme.stroke * 1.3 }),
    line(x(at.eye + 0.006), LEVEL, x(1), LEVEL, { 'stroke-dasharray': '3 2' }),
    box(at.clamp, 9, 11, ink),
    box(at.tensioner, 15, 9, theme.inks.paper),
    ...(input.absorber ? [box(at.absorber, 19, 9, theme.inks.concrete)] : []),
    ...labelsOf(input, at, x, flip, text),
    ...dimension(at.clamp, at.eye, 70, input.mark),
    ...dimension(at.tail, at.eye, 82, input.cut),
    ...dimension(at.eye, at.end, 70, input.eyeOffset),
    text(x(1), 85, input.notToScale, flip ? 'start' : 'end'),
  ])
}

/** Names of the parts above them, in two rows so that neighbours do not meet. */
function labelsOf(
  { words: w, absorber }: RopeStripInput,
  at: { clamp: number; eye: number; tensioner: number; absorber: number },
  x: (share: number) => number,
  flip: boolean,
  text: (x: number, y: number, t: string, anchor: string, bold?: boolean) => SvgElement,
): SvgElement[] {
  const [start, end] = flip ? ['end', 'start'] : ['start', 'end']
  return [
    text(x(0), 9, w.anchor, 'middle'),
    text(x(at.clamp), 19, w.clamp, start),
    text(x(at.eye), 19, w.eye, end),
    text(x(at.tensioner), 9, w.tensioner, end),
    ...(absorber ? [text(x(at.absorber), 19, w.absorber, 'middle')] : []),
    text(x(1), 9, w.anchor, 'middle'),
  ]
}

/** Where a text begins, so that it stays on the picture. */
function inside(x: number, t: string, anchor: string, size: number, bold: boolean, width: number): number {
  const w = textWidth(t, size, bold)
  const left = anchor === 'middle' ? x - w / 2 : anchor === 'end' ? x - w : x
  return Math.max(1, Math.min(left, width - w - 1))
}

/** A text on a plate, so that the line it stands on does not run through it. */
function plated(x: number, y: number, t: string, size: number, theme: Theme): SvgElement[] {
  // Widths by kind of character are rounded up; the plate is not, so that the ends of the line stay in sight.
  const w = textWidth(t, size, true) * 0.88
  const left = Math.max(1, x - w / 2)
  return [
    el('rect', { x: left - 2, y: y - size, width: w + 4, height: size * 1.3, fill: theme.inks.paper }),
    el(
      'text',
      { x: left, y, fill: theme.inks.ink, 'font-size': size, 'font-weight': 700, 'text-anchor': 'start' },
      t,
    ),
  ]
}
