/** Direct evaluation of a room's underside: the reference for its surface and for every gap. */
import type { Room, Slice } from './types'

export interface UndersidePoint {
  /** Lowest point of the room at that place in plan, elevation, m. */
  z: number
  /** The swing that reaches lowest there. */
  slice: Slice
}

/**
 * The lowest elevation that any swing of the room reaches above or below the plan point (x, y), m, and which; null where
 * the point lies outside every swing.
 */
export function underside(room: Room, x: number, y: number): UndersidePoint | null {
  let z = Number.POSITIVE_INFINITY
  let lowest: Slice | null = null
  const look = (list: Slice[], from: number, to: number): void => {
    for (let i = from; i < to; i++) {
      const s = list[i]!
      if (s.z - s.radius >= z) continue
      const at = sliceUnderside(s, room.side, x, y)
      if (at < z) [z, lowest] = [at, s]
    }
  }
  const [from, to] = slicesNear(room, x, y)
  look(room.slices, from, to)
  for (const fan of room.ends) {
    if (Math.hypot(x - fan.x, y - fan.y) <= fan.reach + room.side) look(fan.slices, 0, fan.slices.length)
  }
  return lowest ? { z, slice: lowest } : null
}

/** Underside of one swing at (x, y): the nearest feet position to the bottom whose disc covers the point; else infinite. */
export function sliceUnderside(s: Slice, side: number, x: number, y: number): number {
  const px = x - s.x
  const py = y - s.y
  const along = Math.abs(px * s.dx + py * s.dy)
  const across = py * s.dx - px * s.dy
  if (across > side || across < -side) return Number.POSITIVE_INFINITY
  const t = Math.max(0, along - Math.sqrt(side * side - across * across))
  return t > s.reach ? Number.POSITIVE_INFINITY : s.z - Math.sqrt(s.radius * s.radius - t * t)
}

/** Range of `room.slices` whose planes pass within the body's half-width of a point; they are sorted by station. */
function slicesNear(room: Room, x: number, y: number): [number, number] {
  const { frame } = room
  const flat = (x - frame.origin[0]) * frame.along[0] + (y - frame.origin[1]) * frame.along[1]
  const station = flat / frame.planRate ** 2
  const wide = room.side / frame.planRate
  return [firstAtLeast(room.slices, station - wide), firstAtLeast(room.slices, station + wide + 1e-12)]
}

/** Index of the first slice at or past a station. */
export function firstAtLeast(slices: Slice[], station: number): number {
  let low = 0
  let high = slices.length
  while (low < high) {
    const mid = (low + high) >> 1
    if (slices[mid]!.station < station) low = mid + 1
    else high = mid
  }
  return low
}

/** Elevation of the plane under which the room lies, m. */
export const lidAt = (room: Room, x: number, y: number): number =>
  room.lid.z0 + room.lid.gx * x + room.lid.gy * y

/** Every swing of a room. */
export const allSlices = (room: Room): Slice[] => [...room.slices, ...room.ends.flatMap((fan) => fan.slices)]

/** The lowest point of the room, or null for an empty one. */
export function lowestPoint(room: Room): UndersidePoint | null {
  let best: UndersidePoint | null = null
  for (const slice of allSlices(room)) {
    const z = slice.z - slice.radius
    if (!best || z < best.z) best = { z, slice }
  }
  return best
}
