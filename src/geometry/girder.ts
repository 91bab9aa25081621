import type { Girder, Vec3 } from '../plan/types'
import { add, dot, length, scale, sub } from './vec'

/** A girder's own directions: where a station and an offset lie in space. */
export interface GirderFrame {
  origin: Vec3
  /** Unit vector along the top centreline, start to end (it may slope). */
  along: Vec3
  /** Horizontal unit vector to the left, looking from start to end. */
  left: Vec3
  /** Length of the top centreline, m. */
  length: number
  /** Horizontal part of `along`: metres in plan for a metre of station. */
  planRate: number
  /** Rise of the top for a metre of station. */
  rise: number
}

/** The frame of a girder. The plan's schema has refused girders without length and vertical ones. */
export function girderFrame(girder: Girder): GirderFrame {
  const run = sub(girder.end, girder.start)
  const size = length(run)
  const along = scale(run, 1 / size)
  const planRate = Math.hypot(along[0], along[1])
  return {
    origin: girder.start,
    along,
    left: [-along[1] / planRate, along[0] / planRate, 0],
    length: size,
    planRate,
    rise: along[2],
  }
}

/** The point on the girder's top at a station (m along the top) and an offset (m, positive to the left). */
export function topPoint(frame: GirderFrame, station: number, offset: number): Vec3 {
  return add(add(frame.origin, scale(frame.along, station)), scale(frame.left, offset))
}

/** Station and offset of a point in plan, m; its height does not count. */
export function stationOf(frame: GirderFrame, point: Vec3): { station: number; offset: number } {
  const from = sub(point, frame.origin)
  const flat = from[0] * frame.along[0] + from[1] * frame.along[1]
  return { station: flat / frame.planRate ** 2, offset: dot([from[0], from[1], 0], frame.left) }
}
