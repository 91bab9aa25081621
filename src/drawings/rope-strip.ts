/**
 * The rope laid out before tensioning, as a crew sees it on the girder: which part follows which, where the rope is
 * marked and cut, and how far the eye lies from its stanchion. Not to scale: lengths stand on it as numbers.
 */
import { type StripPen, stripPen } from './rope-strip-pen'
import { type SvgElement, svgRoot } from './svg'
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

/** Heights on the picture, in its units: rope, girder, the two rows of names and of dimensions. */
const LEVEL = 30
const BASE = 52
const NAMES = [9, 19] as const
const DIMENSIONS = [70, 82] as const
const HEIGHT = 87

/** Where things are between the clamp's stanchion (0) and the tensioner's (1); only their order is meant. */
const AT = { clamp: 0.075, tail: 0.025, eye: 0.8, tensioner: 0.86, absorber: 0.93 }

/** With more stanchions than these only the ends are named. */
const MOST_NAMES = 14

/** A picture of `width` picture units; its height follows from what stands on it. */
export function ropeStrip(input: RopeStripInput, width: number, theme: Theme = paperTheme): SvgElement {
  if (input.stanchions.length < 2) return svgRoot(width, HEIGHT, [])
  // Along the rope from the clamp's end to the tensioner's; mirrored where the tensioner is at the start.
  const flip = input.tensionerAt === 'start'
  const pen = stripPen(width, flip, theme)
  return svgRoot(width, HEIGHT, [
    ...postsOf(input, pen),
    ...ropeOf(input, pen),
    ...labelsOf(input, pen),
    ...pen.dimension(AT.clamp, AT.eye, DIMENSIONS[0], input.mark),
    ...pen.dimension(AT.tail, AT.eye, DIMENSIONS[1], input.cut),
    ...pen.dimension(AT.eye, 1, DIMENSIONS[0], input.eyeOffset),
    pen.text(pen.x(1), HEIGHT - 2, input.notToScale, flip ? 'start' : 'end'),
  ])
}

/** The girder and the stanchions on it, the ends stouter; the others stand between clamp and eye. */
function postsOf({ stanchions }: RopeStripInput, pen: StripPen): SvgElement[] {
  const last = stanchions.length - 1
  const order = pen.flip ? [...stanchions].reverse() : stanchions
  const posts = order.flatMap((id, i) => {
    const end = i === 0 || i === last
    const x = pen.x(i === 0 ? 0 : i === last ? 1 : AT.clamp + ((AT.eye - AT.clamp) * i) / last)
    const post = pen.line([x, BASE], [x, LEVEL - 4], end ? 2.4 : 1.4)
    return end || last < MOST_NAMES ? [post, pen.text(x, BASE + 9, id, 'middle', true)] : [post]
  })
  const [left, right] = [Math.min(pen.x(0), pen.x(1)) - 14, Math.max(pen.x(0), pen.x(1)) + 14]
  return [pen.line([left, BASE], [right, BASE], 1.6), ...posts]
}

/** The rope from the clamp to its eye, and what follows it to the other stanchion. */
function ropeOf({ absorber }: RopeStripInput, pen: StripPen): SvgElement[] {
  const { x, line, box } = pen
  const { ink, paper, concrete } = pen.theme.inks
  return [
    line([x(0), LEVEL], [x(AT.eye), LEVEL], 1.3),
    // The tail hangs beside the rope, past the clamp.
    line([x(AT.clamp), LEVEL + 4], [x(AT.tail), LEVEL + 9], 1.3),
    pen.ring(AT.eye, LEVEL),
    line([x(AT.eye + 0.006), LEVEL], [x(1), LEVEL], 1, '3 2'),
    box(AT.clamp, LEVEL, [9, 11], ink),
    box(AT.tensioner, LEVEL, [15, 9], paper),
    ...(absorber ? [box(AT.absorber, LEVEL, [19, 9], concrete)] : []),
  ]
}

/** Names of the parts above them, in two rows so that neighbours do not meet. */
function labelsOf({ words: w, absorber }: RopeStripInput, { x, text, flip }: StripPen): SvgElement[] {
  const [start, end] = flip ? (['end', 'start'] as const) : (['start', 'end'] as const)
  const [high, low] = NAMES
  return [
    text(x(0), high, w.anchor, 'middle'),
    text(x(AT.clamp), low, w.clamp, start),
    text(x(AT.eye), low, w.eye, end),
    text(x(AT.tensioner), high, w.tensioner, end),
    ...(absorber ? [text(x(AT.absorber), low, w.absorber, 'middle')] : []),
    text(x(1), high, w.anchor, 'middle'),
  ]
}
