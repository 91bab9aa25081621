/** The room cut square to its girder at one station. */
import { topPoint } from '../girder'
import type { Room } from './types'
import { underside } from './underside'

/** Step between points across, and the widest offset that is looked at, m. */
const STEP = 0.05
const WIDEST = 12

/** Offset (m, positive left) and height above the girder's top along the underside; empty where nothing swings there. */
export function undersideAcross(room: Room, station: number): [number, number][] {
  const points: [number, number][] = []
  for (let i = Math.round(-WIDEST / STEP); i <= WIDEST / STEP; i++) {
    const [x, y, top] = topPoint(room.frame, station, i * STEP)
    const under = underside(room, x, y)
    if (under) points.push([i * STEP, under.z - top])
  }
  return points
}
