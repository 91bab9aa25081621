/**
 * The tape: a girder unrolled, with its loops counted from the start, the line on it, the rope as installed and as the
 * governing fall pulls it down, the underside of the fall room and what lies below. Pan and zoom are parameters: the
 * stations shown and the size of the picture.
 */
import { headHeight } from '../geometry/line'
import { loopStation } from '../geometry/loops'
import type { Line, Plan, Vec3 } from '../plan/types'
import { formatLength } from '../plan/units'
import type { Results } from '../study/results'
import { type Drawing, type DrawingWords, englishDrawingWords } from './drawing'
import { girderRoll } from './frame'
import { rowOfLine } from './loops'
import type { Mark } from './marks'
import { clashMarks, farBelowMarks, obstacleMarks, seenBy } from './obstacle-marks'
import { type MeshBounds, sideShapes } from './obstacle-shapes'
import { picture } from './picture'
import * as side from './side-marks'
import { textWidth } from './text-size'
import { screenTheme, type Theme } from './theme'
import { fitView, type Margins, type View, viewX, type Window } from './view'

/** What the tape needs of a line's details, however they were computed. */
export interface RopePicture {
  installedRope: Vec3[]
  saggedRope: Vec3[]
}

export interface TapeInput {
  plan: Plan
  line: Line
  results: Results | null
  rope: RopePicture | null
  meshes?: MeshBounds
  /** References as 'stanchion:S2'. */
  selected?: ReadonlySet<string>
  units: 'us' | 'si'
  words?: DrawingWords
  /** What stands at the left of the tape, as START on a crew's sheet. */
  startName?: string
}

export interface TapeOptions {
  width: number
  height: number
  /** Stations shown; absent: the whole line with a little beside it. */
  stations?: Window
  theme?: Theme
}

/** The stations that the tape shows when nobody has zoomed: from tie-back to tie-back. */
export function tapeWindow(plan: Plan, line: Line): Window {
  const girder = plan.girders.find((g) => g.id === line.girder)
  const length = girder ? girderRoll(girder).length : 1
  const stations = line.stanchions.map((s) => s.station)
  const feet = line.tieBacks.flatMap((t) =>
    [t.strapLoop, t.tensionerLoop].flatMap((loop) => {
      const row = girder?.loops.find((r) => r.id === loop.row)
      return row ? [loopStation(row, loop.index)] : []
    }),
  )
  const all = [...stations, ...feet]
  if (all.length === 0) return { low: 0, high: length }
  const beside = Math.max(0.6, (Math.max(...all) - Math.min(...all)) * 0.05)
  return { low: Math.min(...all) - beside, high: Math.max(...all) + beside }
}

/** The tape of one line; `toModel(view, [x, y])[0]` is the station under a pointer. A missing girder gives an empty picture. */
export function tape(input: TapeInput, options: TapeOptions): Drawing {
  const theme = options.theme ?? screenTheme
  const { plan, line } = input
  const words = input.words ?? englishDrawingWords
  const girder = plan.girders.find((g) => g.id === line.girder)
  const stations = options.stations ?? tapeWindow(plan, line)
  if (!girder) return emptyTape(options, stations, theme)
  const frame = girderRoll(girder)
  const levels = side.floorLevels(input.results?.lines.find((l) => l.id === line.id) ?? null)
  const heights = heightWindow(plan, line, levels, girder.section.depth)
  const view = fitView(options.width, options.height, stations, heights, tapeMargins(theme))
  const unrolled = side.unrolledSide(frame)
  const emphasis = { selected: input.selected ?? new Set<string>() }
  const shapes = sideShapes(plan, girder, input.meshes)
  const seen = seenBy(input, levels)
  const showing = { side: unrolled, stations, bottom: heights.low, selected: emphasis.selected }
  const clash = (gap: number, name: string): string => words.into(formatLength(-gap, input.units), name)
  const marks: Mark[] = [
    ...side.girderMarks(unrolled, girder.section.depth, `girder:${girder.id}`),
    ...shapes.flatMap((s) => obstacleMarks(s, seen(s), showing)),
    ...side.floorMarks(unrolled, line.id, levels),
    ...shapes.flatMap((s) => clashMarks(s, seen(s), levels, unrolled, (g) => clash(g, s.name))),
    ...tapeLoops(input, unrolled, view),
    ...side.tieBackMarks(unrolled, plan, line, emphasis),
    ...(input.rope ? side.ropeMarks(unrolled, line.id, input.rope.installedRope, input.rope.saggedRope) : []),
    ...side.stanchionMarks(unrolled, plan, line, emphasis),
    ...depthDimension(levels, unrolled, input.units),
    ...spanDimensions(line, unrolled, input.units),
    ...farBelowMarks(shapes, showing, { units: input.units, words, seen }),
    ...startMarks(input, stations),
    scaleNote(view, heights.low, stations, words),
  ]
  const visible = marks.filter((m) => within(m, view) && fits(m, view, theme))
  const made = picture(visible, view, theme, { title: `Tape of ${line.name}` })
  return { marks, picture: made, view, scale: null }
}

const tapeMargins = (theme: Theme): Margins => ({ left: 8, right: 8, top: theme.textSize * 1.9, bottom: 4 })

function emptyTape(options: TapeOptions, stations: Window, theme: Theme): Drawing {
  const view = fitView(options.width, options.height, stations, { low: -1, high: 1 }, tapeMargins(theme))
  return { marks: [], picture: picture([], view, theme), view, scale: null }
}

/** The tape's lowest height goes by such steps, m: it stands still under a hand whose moves change the room by a little. */
const HEIGHT_STEP = 0.25

/** From above the heads to a little below the room, m above the girder top. */
function heightWindow(plan: Plan, line: Line, levels: side.FloorLevel[], depth: number): Window {
  const heads = line.stanchions.map((s) => headHeight(plan, s) ?? 0)
  const deepest = Math.max(depth, ...levels.map((f) => f.depth))
  const below = Math.ceil((deepest * 1.18) / HEIGHT_STEP + 0.5) * HEIGHT_STEP
  return { low: -below, high: Math.max(0.5, ...heads) }
}

function tapeLoops(input: TapeInput, unrolled: side.Side, view: View): Mark[] {
  const row = rowOfLine(input.plan, input.line)
  if (!row) return []
  const pixels = row.spacing * view.scaleX
  const every = [1, 2, 5, 10, 20, 50, 100].find((n) => n * pixels >= 3) ?? 200
  const numberEvery = [5, 10, 20, 50, 100, 200, 500].find((n) => n * pixels >= 26) ?? 1000
  return side.loopMarks(unrolled, row, { tick: 6 / view.scaleY, every, numberEvery })
}

function spanDimensions(line: Line, unrolled: side.Side, units: 'us' | 'si'): Mark[] {
  return line.stanchions.slice(1).map((b, i): Mark => {
    const a = line.stanchions[i]!
    const text = formatLength(b.station - a.station, units)
    const [from, to] = [unrolled.at(a.station, 0), unrolled.at(b.station, 0)]
    const ref = `span:${line.id}:${i}`
    return {
      kind: 'dimension',
      layer: 'DIMENSIONS',
      from,
      to,
      text,
      axis: 'across',
      away: -30,
      optional: true,
      ref,
    }
  })
}

/** The greatest depth of the room, at its station. */
function depthDimension(levels: side.FloorLevel[], unrolled: side.Side, units: 'us' | 'si'): Mark[] {
  const deepest = levels.reduce<side.FloorLevel | null>((a, b) => (a && a.depth >= b.depth ? a : b), null)
  if (!deepest) return []
  const [from, to] = [unrolled.at(deepest.station, 0), unrolled.at(deepest.station, -deepest.depth)]
  const text = formatLength(deepest.depth, units)
  const look = { ink: 'room', clear: true } as const
  return [{ kind: 'dimension', layer: 'DIMENSIONS', from, to, text, axis: 'up', away: 0, ...look }]
}

/** The name of the end from which stations and loops are counted. */
function startMarks(input: TapeInput, stations: Window): Mark[] {
  if (!input.startName) return []
  const at: [number, number] = [stations.low, 0]
  return [
    {
      kind: 'text',
      layer: 'TEXT',
      at,
      text: input.startName,
      bold: true,
      anchor: 'start',
      shift: [2, -14],
      dodge: 'up',
    },
  ]
}

/** Heights and stations have scales of their own on the tape, and it says so. */
function scaleNote(view: View, low: number, stations: Window, words: DrawingWords): Mark {
  const ratio = view.scaleY / view.scaleX
  const text = words.heightsScale(ratio >= 10 ? String(Math.round(ratio)) : ratio.toFixed(ratio < 1 ? 2 : 1))
  const at: [number, number] = [stations.low, low]
  return {
    kind: 'text',
    layer: 'TEXT',
    at,
    text,
    ink: 'quiet',
    anchor: 'start',
    shift: [4, -4],
    dodge: 'up',
    optional: true,
    size: 0.95,
  }
}

/** A text that is wider than the whole tape is left out: it could only be cut. */
const fits = (mark: Mark, view: View, theme: Theme): boolean =>
  mark.kind !== 'text' || textWidth(mark.text, theme.textSize * (mark.size ?? 1)) <= view.width

/** Whether any part of a mark lies between the left and right edge. */
function within(mark: Mark, view: View): boolean {
  const xs =
    mark.kind === 'path'
      ? mark.points.map((p) => p[0])
      : mark.kind === 'dimension'
        ? [mark.from[0], mark.to[0]]
        : [mark.at[0]]
  return viewX(view, Math.max(...xs)) >= 0 && viewX(view, Math.min(...xs)) <= view.width
}
