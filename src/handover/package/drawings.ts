/** Drawings of one line to a stated scale: elevation, plan, and sections where the room is worst. */
import type { Content } from 'pdfmake/interfaces'
import type { Drawing } from '../../drawings/drawing'
import { elevation } from '../../drawings/elevation'
import { planView } from '../../drawings/plan-view'
import { crossSection } from '../../drawings/section'
import { stack } from '../../drawings/stack'
import { paperTheme } from '../../drawings/theme'
import { headHeight } from '../../geometry/line'
import { formatLength } from '../../plan/units'
import type { LineFile } from '../input'
import { nameOf } from '../names'
import { drawing, heading, inner, say, together } from '../pdf/paper'
import type { Chapter } from './context'
import { bodyAt, roomOutline, undersideAt, worstStations } from './room-section'

/** A drawing of a line under the names that it has on paper and in files. */
export interface NamedDrawing {
  drawing: Drawing
  /** On paper. */
  title: string
  /** Ends the name of its SVG file, as 'section-1'. */
  file: string
  /** Names it in the DXF file of the line. */
  layout: string
  /** Where it stands there: at its own coordinates, below that, or in the row to the right. */
  place: 'own' | 'below' | 'right'
}

/** A line's drawings: papers, SVG files and the DXF file take all of them, in this order. */
export function lineDrawings(c: Chapter, file: LineFile): NamedDrawing[] {
  const { plan, study } = c.input
  const room = study.obstacles.rooms.find((r) => r.line === file.line.id)
  const girder = file.study.input.girder
  const base = {
    plan,
    line: file.line,
    results: study.results,
    rope: { installedRope: file.detail.installedRope, saggedRope: file.detail.saggedRope },
    units: c.units,
    ...(c.input.meshes ? { meshes: c.input.meshes } : {}),
  }
  const size = { width: inner(c.sheet).width, height: 300 }
  const stations = file.results.floor.map((f) => f.station)
  const outline = room
    ? roomOutline(
        room,
        girder,
        stations.filter((_, i) => i % 2 === 0),
      )
    : []
  const side = elevation(base, size)
  const above = planView({ ...base, roomOutline: outline }, { ...size, height: 240 })
  return [
    ...named(side, { title: 'Elevation', file: 'elevation', layout: 'elevation', place: 'own' }),
    ...named(above, { title: 'Plan, station to the right', file: 'plan', layout: 'plan', place: 'below' }),
    ...sectionsOf(c, file).flatMap(({ station, drawing }, i) =>
      named(drawing, {
        title: `Section at station ${formatLength(station, c.units)}, looking from start to end`,
        file: `section-${i + 1}`,
        layout: `section at ${station.toFixed(3)} m`,
        place: 'right',
      }),
    ),
  ]
}

const named = (drawing: Drawing | null, names: Omit<NamedDrawing, 'drawing'>): NamedDrawing[] =>
  drawing ? [{ ...names, drawing }] : []

function sectionsOf(c: Chapter, file: LineFile): { station: number; drawing: Drawing }[] {
  const { plan, study } = c.input
  const room = study.obstacles.rooms.find((r) => r.line === file.line.id)
  if (!room) return []
  const mine = study.results.obstacles.filter((o) => o.line === file.line.id)
  const girder = file.study.input.girder
  return worstStations(file, mine).flatMap((station) => {
    const body = bodyAt(file, station)
    const input = {
      plan,
      girder: girder.id,
      station,
      underside: undersideAt(room, girder, station),
      rope: ropeAt(c, file, station),
      units: c.units,
      ...(c.input.meshes ? { meshes: c.input.meshes } : {}),
      ...(body ?? {}),
    }
    const made = crossSection(input, { width: 420, height: 360 })
    return made ? [{ station, drawing: made }] : []
  })
}

/** Where the installed rope passes: offset and height, straight between the heads. */
function ropeAt(c: Chapter, { line }: LineFile, station: number): [number, number] {
  const after = line.stanchions.findIndex((s) => s.station >= station - 1e-9)
  const b = line.stanchions[Math.max(0, after)]!
  const a = line.stanchions[Math.max(0, after - 1)] ?? b
  const run = b.station - a.station
  const t = run > 0 ? (station - a.station) / run : 0
  const [ha, hb] = [headHeight(c.input.plan, a) ?? 0, headHeight(c.input.plan, b) ?? 0]
  return [a.offset + (b.offset - a.offset) * t, ha + (hb - ha) * t]
}

const scaled = (name: string, d: Drawing): string => `${name}. Scale 1:${d.scale}, printed at full size.`

export function drawingChapter(c: Chapter, file: LineFile, made: readonly NamedDrawing[]): Content[] {
  const { letters } = c
  return made.map(({ title, drawing: d }, i) =>
    together([
      ...(i === 0 ? [heading(letters, `Drawings: ${file.line.name}`, 2)] : []),
      say(letters, scaled(title, d), { bold: true, size: 8.5 }),
      drawing(d.picture, letters),
    ]),
  )
}

/** The clearance as a stack, with its sum in words beside it. */
export function stackChapter(c: Chapter, file: LineFile): Content[] {
  const { governing } = file.detail
  const worker = file.study.input.workers.find((w) => w.worker.id === governing?.worker)?.worker
  if (!governing || !worker) return []
  const { freeFall, lineDrop, connectorExtension } = governing
  if (freeFall === null || lineDrop === null || connectorExtension === null) return []
  const input = {
    freeFall,
    lineDrop,
    connectorExtension,
    harnessStretch: worker.harnessStretch,
    marginBelow: c.input.plan.basis.marginBelow,
    excess: Math.max(0, file.study.excess[governing.span] ?? 0),
    there: thereBelow(c, file, governing.station),
    units: c.units,
  }
  const picture = stack(input, 300, 230, paperTheme)
  const where = `${worker.name}, station ${formatLength(governing.station, c.units)}, by energy, ${governing.line} line, ${governing.connector} connector`
  return [
    together([
      heading(c.letters, `What adds up to the clearance: ${file.line.name}`, 2),
      say(c.letters, where, { size: 8.5 }),
      drawing(picture, c.letters),
    ]),
  ]
}

/** What lies nearest below the girder top at a station of this line, its own margin taken off. */
function thereBelow(c: Chapter, file: LineFile, station: number): { name: string; distance: number } | null {
  const at = file.results.floor.reduce((a, b) =>
    Math.abs(b.station - station) < Math.abs(a.station - station) ? b : a,
  )
  if (at.depth === null) return null
  const mine = c.input.study.results.obstacles.filter(
    (o) =>
      o.line === file.line.id && o.gap !== null && o.station !== null && Math.abs(o.station - station) < 0.5,
  )
  const nearest = mine.reduce<(typeof mine)[number] | null>((a, b) => (a && a.gap! <= b.gap! ? a : b), null)
  if (!nearest) return null
  const depth = at.depth + Math.max(0, at.excess ?? 0)
  return { name: nameOf(c.input.plan, nearest.id), distance: depth + nearest.gap! }
}
