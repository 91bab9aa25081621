/** The elevation of one line to scale: true levels, what is below, spans, the depth of the room, levels at the side. */
import { headHeight } from '../geometry/line'
import { formatLength } from '../plan/units'
import { type Drawing, englishDrawingWords } from './drawing'
import { girderRoll } from './frame'
import { rowOfLine } from './loops'
import type { Mark } from './marks'
import { clashMarks, farBelowMarks, obstacleMarks, seenBy } from './obstacle-marks'
import { type SideShape, sideShapes } from './obstacle-shapes'
import { picture } from './picture'
import * as side from './side-marks'
import { type TapeInput, tapeWindow } from './tape'
import { paperTheme, type Theme } from './theme'
import { type Margins, type Point, paperScale, pointsPerMetre, scaledView, type Window } from './view'

export interface PaperSize {
  /** Room for the drawing, points. */
  width: number
  height: number
  theme?: Theme
  /** 1 to this; absent: the largest usual scale that fits. */
  scale?: number
}

const margins: Margins = { left: 10, right: 62, top: 40, bottom: 30 }

/** The elevation of a line; null where its girder is missing or it has no stanchions. */
export function elevation(input: TapeInput, size: PaperSize): Drawing | null {
  const { plan, line } = input
  const girder = plan.girders.find((g) => g.id === line.girder)
  if (!girder || line.stanchions.length === 0) return null
  const roll = girderRoll(girder)
  const level = side.levelSide(roll)
  const stations = tapeWindow(plan, line)
  const levels = side.floorLevels(input.results?.lines.find((l) => l.id === line.id) ?? null)
  const shapes = sideShapes(plan, girder, input.meshes)
  const bottom = lowest(shapes, levels, girder.section.depth, roll.topAt((stations.low + stations.high) / 2))
  const heads = Math.max(...line.stanchions.map((s) => headHeight(plan, s) ?? 0))
  const corners = [stations.low, stations.high].flatMap((s) => [level.at(s, heads), level.at(s, bottom)])
  const x: Window = { low: corners[0]![0], high: corners[2]![0] }
  const y: Window = {
    low: Math.min(...corners.map((c) => c[1])),
    high: Math.max(...corners.map((c) => c[1])),
  }
  const scale = size.scale ?? paperScale(x, y, size.width, size.height, margins)
  const view = scaledView(scale, x, y, margins)
  const marks = elevationMarks(input, {
    level,
    stations,
    levels,
    shapes,
    bottom,
    scale,
    depth: girder.section.depth,
  })
  const made = picture(marks, view, size.theme ?? paperTheme, { title: `Elevation of ${line.name}` })
  return { marks, picture: made, view, scale }
}

interface Parts {
  level: side.Side
  stations: Window
  levels: side.FloorLevel[]
  shapes: SideShape[]
  bottom: number
  scale: number
  depth: number
}

function elevationMarks(input: TapeInput, p: Parts): Mark[] {
  const { plan, line } = input
  const words = input.words ?? englishDrawingWords
  const emphasis = { selected: input.selected ?? new Set<string>() }
  const seen = seenBy(input, p.levels)
  const showing = { side: p.level, stations: p.stations, bottom: p.bottom, selected: emphasis.selected }
  const row = rowOfLine(plan, line)
  const points = (row?.spacing ?? 1) * pointsPerMetre(p.scale)
  const numberEvery = [5, 10, 20, 50, 100, 200, 500].find((n) => n * points >= 18) ?? 1000
  const clash = (s: SideShape) => (gap: number) => words.into(formatLength(-gap, input.units), s.name)
  return [
    ...side.girderMarks(p.level, p.depth, `girder:${line.girder}`, p.stations),
    ...p.shapes.flatMap((s) => obstacleMarks(s, seen(s), showing)),
    ...side.floorMarks(p.level, line.id, p.levels),
    ...p.shapes.flatMap((s) => clashMarks(s, seen(s), p.levels, p.level, clash(s))),
    ...(row ? side.loopMarks(p.level, row, { tick: row.height, every: 1, numberEvery }, p.stations) : []),
    ...side.tieBackMarks(p.level, plan, line, emphasis),
    ...(input.rope ? side.ropeMarks(p.level, line.id, input.rope.installedRope, input.rope.saggedRope) : []),
    ...side.stanchionMarks(p.level, plan, line, emphasis),
    ...spanDimensions(input, p),
    ...levelMarks(input, p),
    ...farBelowMarks(p.shapes, showing, { units: input.units, words, seen, under: true }),
  ]
}

/** Below the girder top: enough for the room and, where it is near, the highest thing under it. */
function lowest(shapes: SideShape[], levels: side.FloorLevel[], depth: number, top: number): number {
  const deepest = Math.max(depth, ...levels.map((f) => f.depth))
  const near = shapes.map((s) => top - (s.bottom ?? s.top - 0.4)).filter((d) => d > 0 && d < deepest * 2.6)
  return -Math.max(deepest + 0.6, ...near)
}

function spanDimensions(input: TapeInput, p: Parts): Mark[] {
  const { line, plan, units } = input
  const heads = Math.max(...line.stanchions.map((s) => headHeight(plan, s) ?? 0))
  const away = 24
  return line.stanchions.slice(1).map((b, i): Mark => {
    const a = line.stanchions[i]!
    const text = formatLength(b.station - a.station, units)
    const [from, to] = [p.level.at(a.station, heads), p.level.at(b.station, heads)]
    return { kind: 'dimension', layer: 'DIMENSIONS', from, to, text, axis: 'across', away, optional: true }
  })
}

/** Depth of the room at its deepest, and the height of the rope, at the right of the drawing. */
function levelMarks(input: TapeInput, p: Parts): Mark[] {
  const deepest = p.levels.reduce<side.FloorLevel | null>((a, b) => (a && a.depth >= b.depth ? a : b), null)
  if (!deepest) return []
  const edge = (height: number): Point => p.level.at(p.stations.high, height)
  const text = formatLength(deepest.depth, input.units)
  const under = p.level.at(deepest.station, -deepest.depth)
  const foot: Point = [edge(0)[0], edge(0)[1] - deepest.depth]
  return [
    { kind: 'path', layer: 'DIMENSIONS', points: [under, foot], stroke: 'quiet', width: 0.4, dash: [3, 3] },
    { kind: 'dimension', layer: 'DIMENSIONS', from: edge(0), to: foot, text, axis: 'up', away: 8 },
  ]
}
