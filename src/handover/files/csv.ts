/** Tables as CSV: SI figures as they are, units in the heads, so that a spreadsheet can work with them. */
import Papa from 'papaparse'
import { loopNumber } from '../../geometry/loops'
import type { HandoverInput } from '../input'
import { lineFiles } from '../input'
import { nameOf } from '../names'
import { statusWords, worstFirst } from '../status'

type Cell = string | number | null

/** A text that a spreadsheet would take for a formula is kept a text. */
const guarded = (cell: Cell): Cell =>
  typeof cell === 'string' && /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell

const csv = (fields: string[], rows: Cell[][]): string =>
  `${Papa.unparse({ fields, data: rows.map((r) => r.map(guarded)) }, { newline: '\n' })}\n`

export function findingsCsv({ plan, study }: HandoverInput): string {
  const rows = worstFirst(study.results.findings).map((f): Cell[] => [
    f.rule,
    f.subject,
    nameOf(plan, f.subject),
    statusWords[f.status],
    f.value,
    f.limit,
    f.margin ?? null,
    f.unit,
    f.text,
    f.source,
  ])
  return csv(
    ['rule', 'subject', 'name', 'status', 'value', 'limit', 'margin', 'unit', 'text', 'source'],
    rows,
  )
}

export function fallsCsv({ study }: HandoverInput): string {
  const head = [
    'line',
    'method',
    'grip',
    'line set',
    'connector',
    'span',
    'station (m)',
    'worker',
    'workers',
    'free fall (m)',
    'line drop (m)',
    'connector extension (m)',
    'arrest force (N)',
    'tension (N)',
    'absorber extension (m)',
    'total fall (m)',
    'clearance (m)',
  ]
  const rows = study.results.lines.flatMap((l) =>
    l.falls.map((f): Cell[] => [
      l.id,
      f.method === 'energy' ? 'by energy' : 'in time',
      f.grip,
      f.line,
      f.connector,
      f.span + 1,
      f.station,
      f.worker,
      f.workers,
      f.freeFall,
      f.lineDrop,
      f.connectorExtension,
      f.arrestForce,
      f.tension,
      f.absorberExtension,
      f.totalFall,
      f.clearance,
    ]),
  )
  return csv(head, rows)
}

export function stanchionsCsv(input: HandoverInput): string {
  const head = [
    'line',
    'stanchion',
    'role',
    'station (m)',
    'offset (m)',
    'head along (N)',
    'head across (N)',
    'head down (N)',
    'tie-back (N)',
    'shaft (N)',
    'axial (N)',
    'base moment (N m)',
    'loops engaged',
  ]
  const rows = lineFiles(input).flatMap(({ line, results }) =>
    line.stanchions.map((s, i): Cell[] => {
      const r = results.stanchions[i]
      return [
        line.id,
        s.id,
        s.role,
        s.station,
        s.offset,
        r?.head.along ?? null,
        r?.head.across ?? null,
        r?.head.down ?? null,
        r?.tieBackForce ?? null,
        r?.shaftForce ?? null,
        r?.axial ?? null,
        r?.baseMoment ?? null,
        r?.engagedLoops ?? null,
      ]
    }),
  )
  return csv(head, rows)
}

export function tieBacksCsv(input: HandoverInput): string {
  const head = [
    'line',
    'tie-back',
    'stanchion',
    'strap row',
    'strap loop',
    'tensioner row',
    'tensioner loop',
    'part',
  ]
  const rows = input.plan.lines.flatMap((line) =>
    line.tieBacks.map((t): Cell[] => [
      line.id,
      t.id,
      t.stanchion,
      t.strapLoop.row,
      loopNumber(t.strapLoop.index),
      t.tensionerLoop.row,
      loopNumber(t.tensionerLoop.index),
      nameOf(input.plan, t.part),
    ]),
  )
  return csv(head, rows)
}

export function gapsCsv({ plan, study }: HandoverInput): string {
  const head = [
    'id',
    'name',
    'gap (m)',
    'horizontal (m)',
    'in any direction (m)',
    'line',
    'station (m)',
    'x (m)',
    'y (m)',
    'z (m)',
    'not known',
  ]
  const rows = study.results.obstacles.map((o): Cell[] => [
    o.id,
    nameOf(plan, o.id),
    o.gap,
    o.horizontal ?? null,
    o.nearest ?? null,
    o.line,
    o.station,
    ...(o.at ?? [null, null, null]),
    o.unknown ?? null,
  ])
  return csv(head, rows)
}

export function floorCsv({ study }: HandoverInput): string {
  const rows = study.results.lines.flatMap((l) =>
    l.floor.map((f): Cell[] => [l.id, f.station, f.depth, f.excess]),
  )
  return csv(['line', 'station (m)', 'depth below the girder top (m)', 'more by the time method (m)'], rows)
}
