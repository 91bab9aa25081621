/**
 * Volume, footprint and lowest point of rooms and of their union, by direct evaluation: sums over one grid in plan, one
 * place in each square. Each room stands on a place as the interval from its underside to its girder's top; of several the union counts.
 */
import type { Vec3 } from '../../plan/types'
import type { Room } from './types'
import { allSlices, lidAt, lowestPoint, underside } from './underside'

/** Side of a square of the grid, m: footprint and volume of a line come out to about 0.5 %. */
const CELL = 0.1

export interface RoomSize {
  /** m3. */
  volume: number
  /** m2 in plan. */
  footprint: number
  lowest: Vec3 | null
}

type Interval = [low: number, high: number]

/** Sizes of single rooms, in their order, and of everything that lies in any of them. */
export function roomSizes(rooms: Room[]): { each: RoomSize[]; union: RoomSize } {
  const places = new Map<number, Interval[]>()
  const each = rooms.map((room): RoomSize => {
    let [volume, count] = [0, 0]
    for (const [key, at] of keptIntervals(room)) {
      volume += at[1] - at[0]
      count++
      const there = places.get(key)
      if (there) there.push(at)
      else places.set(key, [at])
    }
    return { volume: volume * CELL ** 2, footprint: count * CELL ** 2, lowest: lowestOf([room]) }
  })
  let volume = 0
  for (const intervals of places.values()) volume += covered(intervals)
  return {
    each,
    union: { volume: volume * CELL ** 2, footprint: places.size * CELL ** 2, lowest: lowestOf(rooms) },
  }
}

const known = new WeakMap<Room, [number, Interval][]>()

/** Every square of the grid that the room covers, with what it takes there; found once for a room. */
function keptIntervals(room: Room): [number, Interval][] {
  const kept = known.get(room) ?? intervalsOf(room)
  known.set(room, kept)
  return kept
}

/** Squares to a row of the grid: more than any plan has, so that one number names a square. */
const ROW = 2 ** 24

function intervalsOf(room: Room): [number, Interval][] {
  const out: [number, Interval][] = []
  const [x0, y0, x1, y1] = boundsOf(room)
  for (let i = Math.floor(x0 / CELL); i <= x1 / CELL; i++) {
    for (let k = Math.floor(y0 / CELL); k <= y1 / CELL; k++) {
      const [x, y] = placeIn(i, k)
      const under = underside(room, x, y)
      const lid = lidAt(room, x, y)
      if (under && under.z < lid) out.push([i * ROW + k, [under.z, lid]])
    }
  }
  return out
}

/**
 * The place in a square of the grid that is looked at: spread evenly from square to square (Roberts' additive sequence in
 * two dimensions), for a room's edge that runs along the grid would fall on the same side of every middle.
 */
function placeIn(i: number, k: number): [number, number] {
  const [a, b] = [0.7548776662466927, 0.5698402909980532]
  const part = (v: number): number => v - Math.floor(v)
  return [(i + part(a * k + b * i)) * CELL, (k + part(b * k + a * i)) * CELL]
}

function boundsOf(room: Room): [number, number, number, number] {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const s of allSlices(room)) {
    const far = s.reach + room.side
    x0 = Math.min(x0, s.x - far)
    x1 = Math.max(x1, s.x + far)
    y0 = Math.min(y0, s.y - far)
    y1 = Math.max(y1, s.y + far)
  }
  return [x0, y0, x1, y1]
}

/** Length of what lies in any of some intervals, m. */
function covered(intervals: Interval[]): number {
  const sorted = [...intervals].sort((a, b) => a[0] - b[0])
  let [sum, reached] = [0, Number.NEGATIVE_INFINITY]
  for (const [low, high] of sorted) {
    sum += Math.max(0, high - Math.max(low, reached))
    reached = Math.max(reached, high)
  }
  return sum
}

function lowestOf(rooms: Room[]): Vec3 | null {
  let best: Vec3 | null = null
  for (const room of rooms) {
    const low = lowestPoint(room)
    if (low && (!best || low.z < best[2])) best = [low.slice.x, low.slice.y, low.z]
  }
  return best
}
