/**
 * A girder unrolled: where a point of the site lies along the girder (station, m, along the top centreline), beside it
 * (offset, m, positive left) and above its top (height, m, vertical).
 */
import { girderFrame, stationOf, topPoint } from '../geometry/girder'
import type { Girder, Vec3 } from '../plan/types'

export interface Unrolled {
  station: number
  offset: number
  height: number
}

export interface GirderRoll {
  length: number
  /** Horizontal metres for a metre of station. */
  planRate: number
  /** Elevation of the top at a station. */
  topAt(station: number): number
  /** The point of the top at a station and offset, raised by a height. */
  point(station: number, offset: number, height?: number): Vec3
  unroll(point: Vec3): Unrolled
}

export function girderRoll(girder: Girder): GirderRoll {
  const frame = girderFrame(girder)
  const topAt = (station: number): number => frame.origin[2] + frame.rise * station
  return {
    length: frame.length,
    planRate: frame.planRate,
    topAt,
    point: (station, offset, height = 0) => {
      const [x, y, z] = topPoint(frame, station, offset)
      return [x, y, z + height]
    },
    unroll: (point) => {
      const { station, offset } = stationOf(frame, point)
      return { station, offset, height: point[2] - topAt(station) }
    },
  }
}
