/** What the fall rooms leave free, worst first: who would hit what, from where, by how much. */
import type { Content } from 'pdfmake/interfaces'
import type { ObstacleResult, RoomFigures } from '../../study/results'
import { nameOf, nameWithId } from '../names'
import { heading, say, table } from '../pdf/paper'
import type { Chapter } from './context'

const order = (o: ObstacleResult): number =>
  o.gap !== null ? o.gap : o.unknown !== undefined ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY

const byGap = (list: readonly ObstacleResult[]): ObstacleResult[] =>
  [...list].sort((a, b) => (order(a) === order(b) ? 0 : order(a) - order(b)))

export function clashChapter(c: Chapter): Content[] {
  const { plan, study } = c.input
  const { letters } = c
  const rows = byGap(study.results.obstacles).map((o) => {
    const studied = study.obstacles.gaps.find((g) => g.result.id === o.id)
    return [
      nameWithId(plan, o.id),
      gapWords(o, c),
      nearestWords(o, c),
      o.line ? nameOf(plan, o.line) : '',
      o.station === null ? '' : c.both(o.station, 'm'),
      studied?.worker ? nameOf(plan, studied.worker) : '',
      o.at ? o.at.map((v) => v.toFixed(2)).join(', ') : '',
    ]
  })
  const note =
    "The gap is the least vertical distance from the underside of the fall room to the thing, less the thing's own margin; below zero the room reaches into it. Line, station, worker and place are those of the gap. Any way: the least distance in any direction from the fall room, without that margin."
  return [
    heading(letters, 'Gaps and clashes', 1),
    say(letters, note),
    rows.length === 0
      ? say(letters, 'The plan names nothing that a fall could meet.')
      : table(letters, {
          head: ['What', 'Gap', 'Any way', 'Line', 'Station', 'Worker', 'x, y, z (m)'],
          rows,
          widths: ['*', 82, 70, 56, 58, 50, 68],
          size: 7.5,
        }),
    ...roomTable(c),
  ]
}

/** How large the fall rooms are, each line's and their union; nothing where they were not measured. */
function roomTable(c: Chapter): Content[] {
  const { plan, study } = c.input
  const { rooms } = study.results
  if (!rooms) return []
  const row = (name: string, r: RoomFigures): string[] =>
    r.unknown === undefined
      ? [
          name,
          cubic(r.volume),
          square(r.footprint),
          r.lowest ? r.lowest.map((v) => v.toFixed(2)).join(', ') : '',
        ]
      : [name, `not known: ${r.unknown}`, '', '']
  const { shared } = rooms.plan
  const note = shared !== null && shared > 0.05 ? `; ${cubic(shared)} of it in more than one` : ''
  return [
    heading(c.letters, 'How large the fall rooms are', 2),
    table(c.letters, {
      head: ['Fall room', 'Volume', 'Footprint', 'Lowest point x, y, z (m)'],
      rows: [
        ...rooms.lines.map((r) => row(nameOf(plan, r.id), r)),
        row(`Whole plan, overlaps counted once${note}`, rooms.plan),
      ],
      widths: ['*', 108, 108, 120],
    }),
  ]
}

const FOOT = 0.3048

const both = (value: number | null, power: number, si: string, us: string): string =>
  value === null ? 'not known' : `${value.toFixed(1)} ${si} (${(value / FOOT ** power).toFixed(0)} ${us})`

const cubic = (v: number | null): string => both(v, 3, 'm3', 'ft3')
const square = (v: number | null): string => both(v, 2, 'm2', 'ft2')

/** The least distance in any direction; empty where it was not computed, as while falls in time are left out. */
const nearestWords = (o: ObstacleResult, c: Chapter): string =>
  o.nearest === undefined || o.nearest === null ? '' : c.both(o.nearest, 'm')

function gapWords(o: ObstacleResult, c: Chapter): string {
  if (o.unknown !== undefined) return `not known: ${o.unknown}`
  if (o.gap !== null) return o.gap < 0 ? `${c.both(o.gap, 'm')}: clash` : c.both(o.gap, 'm')
  if (o.horizontal !== null && o.horizontal !== undefined)
    // A figure is not torn from its unit; the other system's may go to the next line.
    return `not under the room; ${c.both(o.horizontal, 'm').replace(/ (?!\()/g, '\u00a0')} beside it`
  return 'not under the room'
}
