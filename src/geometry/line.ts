import type { Girder, Line, Part, Stanchion, Vec3 } from '../plan/types'
import { type GirderFrame, girderFrame, topPoint } from './girder'
import { add, degrees, planDistance } from './vec'

/** A line in space: heads, and how station, horizontal distance and span belong together. */
export interface LineGeometry {
  frame: GirderFrame
  heads: Vec3[]
  feet: Vec3[]
  /** Heights of the heads above the girder's top, m. */
  heights: number[]
  stations: number[]
  offsets: number[]
  /** Horizontal distance from the first head, summed from head to head, m. */
  x: number[]
  /** Slope of each span against the horizontal, degrees, unsigned. */
  slopes: number[]
}

/** Height of the wire rope above the girder's top at a stanchion, m; null where its part is missing. */
export function headHeight(plan: { parts: readonly Part[] }, stanchion: Stanchion): number | null {
  const part = plan.parts.find((p) => p.id === stanchion.part)
  return part?.kind === 'stanchion' ? part.height : null
}

/** The geometry of a line on its girder. Heads stand vertically over the girder's top. */
export function lineGeometry(girder: Girder, line: Line, heights: number[]): LineGeometry {
  const frame = girderFrame(girder)
  const feet = line.stanchions.map((s) => topPoint(frame, s.station, s.offset))
  const heads = feet.map((p, i) => add(p, [0, 0, heights[i]!]))
  const x = [0]
  const slopes: number[] = []
  for (let i = 1; i < heads.length; i++) {
    const run = planDistance(heads[i - 1]!, heads[i]!)
    x.push(x[i - 1]! + run)
    slopes.push(degrees(Math.atan2(Math.abs(heads[i]![2] - heads[i - 1]![2]), run)))
  }
  return {
    frame,
    heads,
    feet,
    heights,
    stations: line.stanchions.map((s) => s.station),
    offsets: line.stanchions.map((s) => s.offset),
    x,
    slopes,
  }
}

/** Where along the line a station lies. */
export interface LinePlace {
  span: number
  /** Horizontal distance from the span's first head, m. */
  at: number
  /** Share of the span, 0..1. */
  share: number
  offset: number
  /** The girder's top under the line there. */
  top: Vec3
}

/** The place of a station (m along the girder) between the first and last stanchion; ends are clamped. */
export function placeOf(g: LineGeometry, station: number): LinePlace {
  const n = g.stations.length
  let span = 0
  while (span < n - 2 && station > g.stations[span + 1]!) span++
  const from = g.stations[span]!
  const share = Math.min(1, Math.max(0, (station - from) / (g.stations[span + 1]! - from)))
  const offset = g.offsets[span]! + share * (g.offsets[span + 1]! - g.offsets[span]!)
  const here = from + share * (g.stations[span + 1]! - from)
  return {
    span,
    at: share * (g.x[span + 1]! - g.x[span]!),
    share,
    offset,
    top: topPoint(g.frame, here, offset),
  }
}

/** Station in the middle of a span, m. */
export const midStation = (g: LineGeometry, span: number): number =>
  (g.stations[span]! + g.stations[span + 1]!) / 2
