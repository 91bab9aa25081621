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
  const packed = packedOf(room)
  const found = { z: Number.POSITIVE_INFINITY, index: -1 }
  const [from, to] = slicesNear(room, x, y)
  // Where the room hangs lowest near the place comes first, so that most of the rest can be passed over.
  const middle = ((from + to) >> 1) & ~(BLOCK - 1)
  lookIn(packed, room.side, x, y, Math.max(from, middle), Math.min(to, middle + BLOCK), found)
  for (let block = from & ~(BLOCK - 1); block < to; block += BLOCK) {
    if (block === middle || packed.lows[block / BLOCK]! >= found.z) continue
    lookIn(packed, room.side, x, y, Math.max(from, block), Math.min(to, block + BLOCK), found)
  }
  let lowest: Slice | null = found.index < 0 ? null : room.slices[found.index]!
  let z = found.z
  for (const fan of room.ends) {
    if (Math.hypot(x - fan.x, y - fan.y) > fan.reach + room.side) continue
    for (const s of fan.slices) {
      if (s.z - s.radius >= z) continue
      const at = sliceUnderside(s, room.side, x, y)
      if (at < z) [z, lowest] = [at, s]
    }
  }
  return lowest ? { z, slice: lowest } : null
}

/** The slices of a room as plain numbers, seven for each, and the lowest point of every sixteen. */
interface Packed {
  numbers: Float64Array
  lows: Float64Array
}

const BLOCK = 16
const EACH = 7
const packs = new WeakMap<Room, Packed>()

function packedOf(room: Room): Packed {
  const kept = packs.get(room)
  if (kept) return kept
  const numbers = new Float64Array(room.slices.length * EACH)
  const lows = new Float64Array(Math.ceil(room.slices.length / BLOCK)).fill(Number.POSITIVE_INFINITY)
  room.slices.forEach((s, i) => {
    numbers.set([s.x, s.y, s.z, s.dx, s.dy, s.radius, s.reach], i * EACH)
    const block = Math.floor(i / BLOCK)
    lows[block] = Math.min(lows[block]!, s.z - s.radius)
  })
  const packed = { numbers, lows }
  packs.set(room, packed)
  return packed
}

/** `sliceUnderside` over a run of packed slices: the innermost loop of every surface and size. */
function lookIn(
  { numbers: n }: Packed,
  side: number,
  x: number,
  y: number,
  from: number,
  to: number,
  found: { z: number; index: number },
): void {
  for (let i = from, o = from * EACH; i < to; i++, o += EACH) {
    const z = n[o + 2]!
    const radius = n[o + 5]!
    if (z - radius >= found.z) continue
    const px = x - n[o]!
    const py = y - n[o + 1]!
    const across = py * n[o + 3]! - px * n[o + 4]!
    if (across > side || across < -side) continue
    const along = Math.abs(px * n[o + 3]! + py * n[o + 4]!)
    const t = Math.max(0, along - Math.sqrt(side * side - across * across))
    if (t > n[o + 6]!) continue
    const at = z - Math.sqrt(radius * radius - t * t)
    if (at < found.z) {
      found.z = at
      found.index = i
    }
  }
}

/** Underside of one swing at (x, y): the nearest feet position to the bottom whose disc covers the point; else infinite. */
function sliceUnderside(s: Slice, side: number, x: number, y: number): number {
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
function firstAtLeast(slices: Slice[], station: number): number {
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
