/**
 * A girder unrolled: where a point of the site lies along the girder (station, m, along the top centreline), beside it
 * (offset, m, positive left) and above its top (height, m, vertical).
 */
import type { Girder, Vec3 } from '../plan/types'

export interface Unrolled {
  station: number
  offset: number
  height: number
}

export interface GirderFrame {
  length: number
  /** Elevation of the top at a station. */
  topAt(station: number): number
  /** The point of the top at a station and offset, raised by a height. */
  point(station: number, offset: number, height?: number): Vec3
  unroll(point: Vec3): Unrolled
}

/** The frame of a girder; a girder without plan length (refused by the reader) is taken along x. */
export function girderFrame(girder: Girder): GirderFrame {
  const [x0, y0, z0] = girder.start
  const d = [girder.end[0] - x0, girder.end[1] - y0, girder.end[2] - z0] as const
  const level = Math.hypot(d[0], d[1])
  const length = Math.hypot(level, d[2])
  const [ux, uy] = level > 0 ? [d[0] / level, d[1] / level] : [1, 0]
  const perMetre = level > 0 ? length / level : 1
  const slope = level > 0 ? d[2] / length : 0
  const topAt = (station: number): number => z0 + slope * station
  return {
    length,
    topAt,
    point: (station, offset, height = 0) => {
      const along = station / perMetre
      return [x0 + ux * along - uy * offset, y0 + uy * along + ux * offset, topAt(station) + height]
    },
    unroll: ([x, y, z]) => {
      const station = ((x - x0) * ux + (y - y0) * uy) * perMetre
      return { station, offset: (y - y0) * ux - (x - x0) * uy, height: z - topAt(station) }
    },
  }
}
