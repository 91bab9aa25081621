import type { Girder, LoopRef, LoopRow, Vec3 } from '../plan/types'
import { type GirderFrame, topPoint } from './girder'

/** Loops farther in offset from a bracket than this are not on its tube, m (mechanics section 7). */
const TUBE_REACH = 0.05

/** A loop within this of a bracket's end, m, counts as on the tube: stations are typed and drawn, not machined. */
const STATION_SLACK = 1e-9

export interface Loop {
  row: LoopRow
  /** From 0, as references count; people count from 1. */
  index: number
  station: number
}

/** The number a person reads for a loop: counted from 1 at the girder's start. */
export const loopNumber = (index: number): number => index + 1

/** Station of loop `index` (from 0) of a row, m. */
export const loopStation = (row: LoopRow, index: number): number => row.first + row.spacing * index

/** The loop a reference names; null where the row or the index does not exist. */
export function findLoop(girder: Girder, ref: LoopRef): Loop | null {
  const row = girder.loops.find((r) => r.id === ref.row)
  if (!row || ref.index < 0 || ref.index >= row.count) return null
  return { row, index: ref.index, station: loopStation(row, ref.index) }
}

/** Foot of a loop on the girder's top. */
export const loopPoint = (frame: GirderFrame, loop: Loop): Vec3 =>
  topPoint(frame, loop.station, loop.row.offset)

/** All loops of a row. */
export function loopsOf(row: LoopRow): Loop[] {
  return Array.from({ length: row.count }, (_, index) => ({ row, index, station: loopStation(row, index) }))
}

/** Loops of a row with stations in [from, to], m, both ends included. */
function loopsBetween(row: LoopRow, from: number, to: number): Loop[] {
  const first = Math.max(0, Math.ceil((from - row.first - STATION_SLACK) / row.spacing))
  const last = Math.min(row.count - 1, Math.floor((to - row.first + STATION_SLACK) / row.spacing))
  const found: Loop[] = []
  for (let index = first; index <= last; index++) found.push({ row, index, station: loopStation(row, index) })
  return found
}

/** The row nearest in offset to a bracket, at most 50 mm away; null where none is. */
export function rowUnder(girder: Girder, offset: number): LoopRow | null {
  let best: LoopRow | null = null
  for (const row of girder.loops) {
    if (!best || Math.abs(row.offset - offset) < Math.abs(best.offset - offset)) best = row
  }
  return best && Math.abs(best.offset - offset) <= TUBE_REACH + STATION_SLACK ? best : null
}

export interface Engagement {
  row: LoopRow | null
  /** Loops on the tube, by station. */
  loops: Loop[]
  before: number
  after: number
}

/** Loops that a bracket's tube passes through, and how many lie on either side (one exactly at the station: neither). */
export function engagedLoops(
  girder: Girder,
  station: number,
  offset: number,
  tubeLength: number,
): Engagement {
  const row = rowUnder(girder, offset)
  if (!row) return { row, loops: [], before: 0, after: 0 }
  const loops = loopsBetween(row, station - tubeLength / 2, station + tubeLength / 2)
  return {
    row,
    loops,
    before: loops.filter((l) => l.station < station - STATION_SLACK).length,
    after: loops.filter((l) => l.station > station + STATION_SLACK).length,
  }
}
