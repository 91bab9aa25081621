/** Site, lines, crew, parts and limits as they stand in the plan, each figure with its source. */
import type { Content } from 'pdfmake/interfaces'
import { loopNumber } from '../../geometry/loops'
import type { Obstacle, Vec3 } from '../../plan/types'
import { formatLength } from '../../plan/units'
import type { LineFile } from '../input'
import { nameOf } from '../names'
import { heading, say, table } from '../pdf/paper'
import type { Chapter } from './context'

/** Coordinates stay in metres: the plan's own datum, as surveyed. */
const place = (p: Vec3): string => p.map((v) => v.toFixed(3)).join(', ')

export function siteChapter(c: Chapter): Content[] {
  const { plan } = c.input
  const { letters } = c
  const girders = plan.girders.map((g) => [
    `${g.name} (${g.id})`,
    g.material,
    place(g.start),
    place(g.end),
    c.both(g.section.depth, 'm'),
    c.both(g.section.topWidth, 'm'),
  ])
  return [
    heading(letters, 'Site', 1),
    heading(letters, 'Girders', 2),
    table(letters, {
      head: ['Girder', 'Material', 'Start x, y, z (m)', 'End x, y, z (m)', 'Depth', 'Top width'],
      rows: girders,
      widths: ['*', 48, 100, 100, 74, 74],
    }),
    ...loopRows(c),
    ...decks(c),
    heading(letters, 'What lies below and beside', 2),
    ...obstacleRows(c),
  ]
}

function loopRows(c: Chapter): Content[] {
  const rows = c.input.plan.girders.flatMap((g) =>
    g.loops.map((r) => [
      `${g.name}, row ${r.id}`,
      String(r.count),
      c.both(r.first, 'm'),
      c.both(r.spacing, 'm'),
      c.both(r.offset, 'm'),
      c.both(r.barDiameter, 'm'),
      c.both(r.yieldStress, 'Pa'),
      c.both(r.height, 'm'),
    ]),
  )
  if (rows.length === 0) return [say(c.letters, 'No loops are in the plan.')]
  return [
    heading(c.letters, 'Loop rows', 2),
    table(c.letters, {
      head: [
        'Row',
        'Loops',
        'First from start',
        'Spacing',
        'Offset, left positive',
        'Bar',
        'Yield stress',
        'Height',
      ],
      rows,
      widths: ['*', 30, 64, 64, 64, 60, 64, 60],
      size: 7.5,
    }),
  ]
}

function decks(c: Chapter): Content[] {
  const list = c.input.plan.decks ?? []
  if (list.length === 0) return []
  const rows = list.map((d) => [d.name, String(d.outline.length), `${d.elevation.toFixed(3)} m`])
  return [
    heading(c.letters, 'Decks', 2),
    table(c.letters, { head: ['Deck', 'Corners', 'Elevation'], rows, widths: ['*', 80, 120] }),
  ]
}

function obstacleRows(c: Chapter): Content[] {
  const list = c.input.plan.obstacles
  if (list.length === 0)
    return [say(c.letters, 'Nothing is named in the plan. What is not named was not looked at.')]
  const rows = list.map((o) => [o.name, o.kind, obstacleText(c, o), c.both(o.margin ?? 0, 'm')])
  return [
    table(c.letters, {
      head: ['Name', 'Kind', 'Where and how large', 'Own margin'],
      rows,
      widths: [120, 54, '*', 80],
    }),
  ]
}

function obstacleText(c: Chapter, o: Obstacle): string {
  const length = (m: number): string => formatLength(m, c.units)
  switch (o.kind) {
    case 'ground':
    case 'water':
      return `at elevation ${o.elevation.toFixed(3)} m`
    case 'box': {
      const moves = o.travel?.length ? `; may move along ${o.travel.length} points` : ''
      return `centre ${place(o.center)} m; ${o.size.map(length).join(' by ')}${o.turn ? `; turned ${o.turn} degrees` : ''}${moves}`
    }
    case 'lane':
      return `from ${place(o.path[0]!)} to ${place(o.path.at(-1)!)} m; ${length(o.width)} wide; clear to ${length(o.clearHeight)} above it`
    case 'mesh':
      return `model file ${o.file}`
    case 'cross-frame':
      return `between ${o.between.map((id) => nameOf(c.input.plan, id)).join(' and ')} at station ${length(o.station)}; bars of ${length(o.barSize)}`
  }
}

/** Stanchions, tie-backs, rope and crew of one line. */
export function lineChapter(c: Chapter, file: LineFile): Content[] {
  const { line, study } = file
  const { letters } = c
  const stanchions = line.stanchions.map((s) => [
    s.id,
    s.role,
    c.both(s.station, 'm'),
    c.both(s.offset, 'm'),
    nameOf(c.input.plan, s.part),
    nameOf(c.input.plan, s.bracket),
    s.plate ? c.both(s.plate, 'm') : 'none',
  ])
  const ends = new Map(
    study.input.stanchions.flatMap((s) => s.tieBacks.map((t) => [t.tieBack.id, t] as const)),
  )
  const tieBacks = line.tieBacks.map((t) => {
    const known = ends.get(t.id)
    return [
      t.id,
      t.stanchion,
      `${t.strapLoop.row} ${loopNumber(t.strapLoop.index)}`,
      `${t.tensionerLoop.row} ${loopNumber(t.tensionerLoop.index)}`,
      known ? known.legs.map((l) => c.both(l.angle, 'deg')).join('; ') : '',
      nameOf(c.input.plan, t.part),
    ]
  })
  return [
    heading(letters, `${line.name} on ${nameOf(c.input.plan, line.girder)}`, 2),
    table(letters, { head: ['', ''], rows: lineFigures(c, file), widths: [170, '*'] }),
    table(letters, {
      head: ['Stanchion', 'Role', 'Station', 'Offset', 'Part', 'Bracket', 'Plates'],
      rows: stanchions,
      widths: [50, 60, 92, 84, '*', '*', 60],
    }),
    ...(tieBacks.length > 0
      ? [
          table(letters, {
            head: ['Tie-back', 'Stanchion', 'Strap loop', 'Tensioner loop', 'Legs from the vertical', 'Part'],
            rows: tieBacks,
            widths: [50, 54, 60, 70, 110, '*'],
          }),
        ]
      : [say(letters, 'No tie-backs.')]),
    ...crewRows(c, file),
  ]
}

function lineFigures(c: Chapter, { line, results }: LineFile): [string, string][] {
  const { plan } = c.input
  const tolerance = `${(line.pretensionTolerance * 100).toFixed(0)} %`
  const service = `${c.both(line.serviceTemperature.low, 'degC')} to ${c.both(line.serviceTemperature.high, 'degC')}`
  const hardware = line.hardware.map((id) => nameOf(plan, id)).join(', ')
  return [
    ['Wire rope', nameOf(plan, line.wireRope)],
    [
      'Line absorber',
      line.absorber === null ? 'none' : `${nameOf(plan, line.absorber)}, at the ${line.absorberAt}`,
    ],
    ['Hardware in series', hardware || 'none'],
    ['Pretension, nominal', `${c.both(line.pretension, 'N')}, plus or minus ${tolerance}`],
    ['Install temperature', c.both(line.installTemperature, 'degC')],
    ['Service temperatures', service],
    ['Wire rope at intermediate stanchions', line.grip ?? 'sliding'],
    ['Workers it must arrest together', String(line.workersAtOnce)],
    ['Sag as installed, each span', results.installed.sag.map((s) => c.both(s, 'm')).join('; ')],
    ['Wire rope, unstretched, between its ends', c.both(results.installed.wireRopeLength, 'm')],
    ['Eye short of its stanchion before tensioning', c.both(results.installed.eyeOffset, 'm')],
    ['Taken up by tensioning', c.both(results.installed.takeUp, 'm')],
  ]
}

function crewRows(c: Chapter, { study }: LineFile): Content[] {
  const rows = study.input.workers.map(({ worker, connector }) => [
    worker.name,
    c.both(worker.mass, 'kg'),
    c.both(worker.dRingHeight, 'm'),
    c.both(worker.harnessStretch, 'm'),
    `${connector.name}, ${connector.type}, ${c.both(connector.length, 'm')}`,
  ])
  if (rows.length === 0)
    return [say(c.letters, 'No worker is on this line in the plan: no fall was computed for it.')]
  return [
    table(c.letters, {
      head: ['Worker', 'Mass, dressed, with tools', 'D-ring above the feet', 'Harness stretch', 'Connector'],
      rows,
      widths: ['*', 86, 86, 86, 150],
    }),
  ]
}
