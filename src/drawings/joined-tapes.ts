/** Two tapes over the same stations above each other, and between them thin joins from where a stanchion was to where it is. */
import type { Drawing } from './drawing'
import type { Mark } from './marks'
import { picture } from './picture'
import { el, type SvgElement, svgRoot } from './svg'
import type { Theme } from './theme'
import type { View } from './view'

export interface Join {
  /** As 'stanchion:S2'. */
  ref: string
  /** Stations in the upper and in the lower tape, m; null where the stanchion is not there. */
  from: number | null
  to: number | null
  /** As "S2 moved 2 ft". */
  text: string
}

export interface JoinedTapes {
  title: string
  above: { tape: Drawing; word: string }
  below: { tape: Drawing; word: string }
  joins: readonly Join[]
}

/** Heights of the band between the tapes and of the word over the upper one, in text sizes. */
const BAND = 5
const HEAD = 1.4

/** One picture of both; empty children where the tapes have no common scale. */
export function joinedTapes({ title, above, below, joins }: JoinedTapes, theme: Theme): SvgElement {
  const { width, height } = above.tape.view
  const head = theme.textSize * HEAD
  const band = joins.length > 0 ? theme.textSize * BAND : head
  const view: View = { ...above.tape.view, height: band, top: 1, scaleY: band }
  const marks = [...joins.flatMap((j) => joinMarks(j, view)), wordMark(below.word, view)]
  const parts: [SvgElement, number][] = [
    [picture([wordMark(above.word, view)], { ...view, height: head, scaleY: head }, theme), 0],
    [above.tape.picture, head],
    [picture(marks, view, theme), head + height],
    [below.tape.picture, head + height + band],
  ]
  const whole = head + height + band + below.tape.view.height
  return svgRoot(
    width,
    whole,
    parts.map(([p, down]) => lowered(p, down)),
    title,
  )
}

/** A picture's shapes without its root, moved down. */
const lowered = (p: SvgElement, down: number): SvgElement =>
  el(
    'g',
    { transform: `translate(0 ${down})` },
    ...p.children.filter((c) => typeof c !== 'string' && c.tag !== 'title'),
  )

/** From the upper edge to the lower one; a stub with a hollow end where a stanchion is gone or new. */
function joinMarks({ ref, from, to, text }: Join, view: View): Mark[] {
  const [top, foot] = [from ?? to!, to ?? from!]
  const ends: [number, number] = [from === null ? 0.45 : 1, to === null ? 0.55 : 0]
  const points: [number, number][] = [
    [top, ends[0]],
    [foot, ends[1]],
  ]
  const stub = from === null ? points[0]! : to === null ? points[1]! : null
  const middle = (top + foot) / 2
  // Beside the join, on the side of the picture that is wider, so that the join is not covered.
  const right = (middle - view.left) * view.scaleX < view.width / 2
  return [
    { kind: 'path', layer: 'STANCHIONS', points, stroke: 'ghost', width: 0.7, dash: [4, 2], ref },
    ...(stub
      ? [
          {
            kind: 'dot',
            layer: 'STANCHIONS',
            at: stub,
            radius: 2.5,
            stroke: 'ghost',
            fill: 'paper',
            ref,
          } as const,
        ]
      : []),
    {
      kind: 'text',
      layer: 'TEXT',
      at: [middle, 0.5],
      text,
      ink: 'ghost',
      bold: true,
      anchor: right ? 'start' : 'end',
      shift: [(right ? 1 : -1) * (4 + (Math.abs(foot - top) * view.scaleX) / 2), 0],
      dodge: 'down',
      ref,
    },
  ]
}

/** "Before" or "After" at the left, over the tape that it names. */
const wordMark = (text: string, view: View): Mark => ({
  kind: 'text',
  layer: 'TEXT',
  at: [view.left, 0],
  text,
  bold: true,
  anchor: 'start',
  shift: [0, -3],
})
