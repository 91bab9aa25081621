/** What the fall rooms leave free, worst first: who would hit what, from where, by how much. */
import type { Content } from 'pdfmake/interfaces'
import type { ObstacleResult } from '../../study/results'
import { nameOf, nameWithId } from '../names'
import { heading, say, table } from '../pdf/paper'
import type { Chapter } from './context'

const order = (o: ObstacleResult): number =>
  o.gap !== null ? o.gap : o.unknown !== undefined ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY

export const byGap = (list: readonly ObstacleResult[]): ObstacleResult[] =>
  [...list].sort((a, b) => (order(a) === order(b) ? 0 : order(a) - order(b)))

export function clashChapter(c: Chapter): Content[] {
  const { plan, study } = c.input
  const { letters } = c
  const rows = byGap(study.results.obstacles).map((o) => {
    const studied = study.obstacles.gaps.find((g) => g.result.id === o.id)
    return [
      nameWithId(plan, o.id),
      gapWords(o, c),
      o.line ? nameOf(plan, o.line) : '',
      o.station === null ? '' : c.both(o.station, 'm'),
      studied?.worker ? nameOf(plan, studied.worker) : '',
      o.at ? o.at.map((v) => v.toFixed(2)).join(', ') : '',
    ]
  })
  const note =
    "The gap is the least vertical distance from the underside of the fall room to the thing, less the thing's own margin; below zero the room reaches into it."
  return [
    heading(letters, 'Gaps and clashes', 1),
    say(letters, note),
    rows.length === 0
      ? say(letters, 'The plan names nothing that a fall could meet.')
      : table(letters, {
          head: ['What', 'Gap', 'Line', 'Station', 'Worker', 'x, y, z (m)'],
          rows,
          widths: ['*', 108, 70, 72, 60, 74],
        }),
  ]
}

function gapWords(o: ObstacleResult, c: Chapter): string {
  if (o.unknown !== undefined) return `not known: ${o.unknown}`
  if (o.gap !== null) return o.gap < 0 ? `${c.both(o.gap, 'm')}: clash` : c.both(o.gap, 'm')
  if (o.horizontal !== null && o.horizontal !== undefined)
    return `not under the room; ${c.both(o.horizontal, 'm')} beside it`
  return 'not under the room'
}
