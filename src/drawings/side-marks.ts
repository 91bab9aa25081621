/**
 * Marks of one line seen from the side, shared by the tape (girder unrolled, heights above its top) and the elevation
 * (true levels): `Side` says where a station and a height above the top lie in the drawing.
 */

import { headHeight } from '../geometry/line'
import { loopNumber, loopStation } from '../geometry/loops'
import type { Line, LoopRow, Plan, TieBack, Vec3 } from '../plan/types'
import type { LineResults } from '../study/results'
import type { GirderRoll } from './frame'

import type { Mark } from './marks'
import type { Point, Window } from './view'

export interface Side {
  frame: GirderRoll
  /** Where a station and a height above the girder top lie, m. */
  at(station: number, height: number): Point
}

/** The girder flat: station across, height above its top upwards. */
export const unrolledSide = (frame: GirderRoll): Side => ({
  frame,
  at: (station, height) => [station, height],
})

/** The girder as it stands: horizontal distance across, elevation upwards. */
export function levelSide(frame: GirderRoll): Side {
  return { frame, at: (station, height) => [station * frame.planRate, frame.topAt(station) + height] }
}

const sidePoint = (side: Side, point: Vec3): Point => {
  const { station, height } = side.frame.unroll(point)
  return side.at(station, height)
}

export interface Emphasis {
  /** References that are selected, as 'stanchion:S2'. */
  selected: ReadonlySet<string>
}

const everywhere: Window = { low: -Infinity, high: Infinity }

/** Top and bottom of the girder within the stations shown. */
export function girderMarks(side: Side, depth: number, ref: string, shown: Window = everywhere): Mark[] {
  const [a, b] = [Math.max(0, shown.low), Math.min(side.frame.length, shown.high)]
  const outline = [side.at(a, 0), side.at(b, 0), side.at(b, -depth), side.at(a, -depth)]
  return [
    {
      kind: 'path',
      layer: 'GIRDERS',
      points: outline,
      closed: true,
      fill: 'concrete',
      fillOpacity: 0.35,
      ref,
    },
    {
      kind: 'path',
      layer: 'GIRDERS',
      points: [side.at(a, -depth), side.at(b, -depth)],
      stroke: 'line',
      ref,
    },
    {
      kind: 'path',
      layer: 'GIRDERS',
      points: [side.at(a, 0), side.at(b, 0)],
      stroke: 'ink',
      width: 1.4,
      ref,
    },
  ]
}

export interface LoopMarkOptions {
  /** Height of a tick, m. */
  tick: number
  /** Every n-th loop is drawn, and every m-th carries its number. */
  every: number
  numberEvery: number
}

/** One tick a loop, a longer one where a number stands. */
export function loopMarks(side: Side, row: LoopRow, o: LoopMarkOptions, shown: Window = everywhere): Mark[] {
  const marks: Mark[] = []
  for (let i = 0; i < row.count; i++) {
    const number = loopNumber(i)
    const numbered = number % o.numberEvery === 0 || i === 0
    if (!numbered && i % o.every !== 0) continue
    const station = loopStation(row, i)
    if (station < shown.low || station > shown.high) continue
    const top = side.at(station, o.tick * (numbered ? 1.5 : 1))
    const points = [side.at(station, 0), top]
    marks.push({ kind: 'path', layer: 'LOOPS', points, stroke: 'quiet', ref: `loop:${row.id}:${i}` })
    if (numbered) {
      const text = String(number)
      marks.push({
        kind: 'text',
        layer: 'TEXT',
        at: side.at(station, 0),
        text,
        ink: 'quiet',
        shift: [0, 12],
        optional: true,
        size: 0.9,
      })
    }
  }
  return marks
}

/** Shafts with a ring at the rope, and their names above. */
export function stanchionMarks(side: Side, plan: Plan, line: Line, emphasis: Emphasis): Mark[] {
  return line.stanchions.flatMap((s): Mark[] => {
    const ref = `stanchion:${s.id}`
    const stroke = emphasis.selected.has(ref) ? ('accent' as const) : ('ink' as const)
    const head = side.at(s.station, headHeight(plan, s) ?? 0)
    const foot = side.at(s.station, 0)
    return [
      { kind: 'path', layer: 'STANCHIONS', points: [foot, head], stroke, width: 2.6, ref, grab: true },
      { kind: 'dot', layer: 'STANCHIONS', at: head, radius: 3, stroke, fill: 'paper', ref },
      {
        kind: 'text',
        layer: 'TEXT',
        at: head,
        text: s.id,
        bold: true,
        ink: stroke,
        shift: [0, -8],
        dodge: 'up',
        // Among many the ends and what is selected are named first; the others where there is room.
        optional: s.role === 'intermediate' && stroke !== 'accent',
        ref,
      },
    ]
  })
}

/** The two legs of each tie-back, and their feet on the loops. */
export function tieBackMarks(side: Side, plan: Plan, line: Line, emphasis: Emphasis): Mark[] {
  return line.tieBacks.flatMap((t) => [
    ...legMarks(side, plan, line, t, 'strap', emphasis),
    ...legMarks(side, plan, line, t, 'tensioner', emphasis),
  ])
}

function legMarks(
  side: Side,
  plan: Plan,
  line: Line,
  t: TieBack,
  foot: 'strap' | 'tensioner',
  emphasis: Emphasis,
): Mark[] {
  const stanchion = line.stanchions.find((s) => s.id === t.stanchion)
  const loop = foot === 'strap' ? t.strapLoop : t.tensionerLoop
  const row = plan.girders.find((g) => g.id === line.girder)?.loops.find((r) => r.id === loop.row)
  if (!stanchion || !row) return []
  const ref = `tie-back:${t.id}:${foot}`
  const chosen = emphasis.selected.has(ref) || emphasis.selected.has(`tie-back:${t.id}`)
  const stroke = chosen ? ('accent' as const) : ('strap' as const)
  const low = side.at(loopStation(row, loop.index), 0)
  const head = side.at(stanchion.station, headHeight(plan, stanchion) ?? 0)
  return [
    {
      kind: 'path',
      layer: 'TIE-BACKS',
      points: [head, low],
      stroke,
      width: 1.8,
      ref: `tie-back:${t.id}`,
      grab: true,
    },
    { kind: 'dot', layer: 'TIE-BACKS', at: low, radius: 2.5, fill: stroke, ref, grab: true },
  ]
}

/** The installed rope, and the rope of the governing fall below it. */
export function ropeMarks(side: Side, lineId: string, installed: Vec3[], sagged: Vec3[]): Mark[] {
  const path = (points: Vec3[]): Point[] => points.map((p) => sidePoint(side, p))
  const ref = `line:${lineId}`
  const marks: Mark[] = []
  if (installed.length > 1) {
    const quiet = sagged.length > 1
    const stroke = quiet ? ('quiet' as const) : ('ink' as const)
    marks.push({ kind: 'path', layer: 'ROPE-INSTALLED', points: path(installed), stroke, width: 0.8, ref })
  }
  if (sagged.length > 1) {
    marks.push({ kind: 'path', layer: 'ROPE-FALL', points: path(sagged), stroke: 'ink', width: 1.2, ref })
  }
  return marks
}

export interface FloorLevel {
  station: number
  /** Underside of the room below the girder top, excess of the time method included, m. */
  depth: number
}

/** The known part of a line's floor, with what the time method adds. */
export function floorLevels(results: LineResults | null): FloorLevel[] {
  return (results?.floor ?? []).flatMap(({ station, depth, excess }) =>
    depth === null ? [] : [{ station, depth: depth + Math.max(0, excess ?? 0) }],
  )
}

/** The room a fall needs, from the girder top to its underside, its lowest line drawn firmly. */
export function floorMarks(side: Side, lineId: string, levels: FloorLevel[]): Mark[] {
  const [first, last] = [levels[0], levels.at(-1)]
  if (!first || !last || levels.length < 2) return []
  const under = levels.map((f) => side.at(f.station, -f.depth))
  const points = [side.at(first.station, 0), side.at(last.station, 0), ...[...under].reverse()]
  const ref = `room:${lineId}`
  return [
    { kind: 'path', layer: 'FALL-ROOM', points, closed: true, fill: 'room', fillOpacity: 0.14, ref },
    { kind: 'path', layer: 'FALL-ROOM', points: under, stroke: 'room', width: 1.3, ref },
  ]
}
