/** The skins of all rooms for pictures; those of rooms that have not changed are kept. */
import type { Room } from '../geometry/room'
import { type Skin, skinOf } from '../geometry/room/skin/skin'

/** How far a picture's skin may stand from its room, m: at rest, and while something is being dragged. */
export const PICTURE_TOLERANCE = { rest: 0.06, drag: 0.2 } as const

export type SkinKeeper = (rooms: readonly Room[], tolerance: number) => Skin[]

interface Kept {
  room: Room
  tolerance: number
  skin: Skin | null
}

/** A function that gives the skin of every room; rooms of nothing have none. */
export function keepSkins(): SkinKeeper {
  let kept = new Map<string, Kept>()
  return (rooms, tolerance) => {
    const next = new Map<string, Kept>()
    const hasty = tolerance > PICTURE_TOLERANCE.rest
    for (const room of rooms) {
      const before = kept.get(room.line)
      const still = before && before.tolerance <= tolerance && sameRoom(before.room, room)
      next.set(room.line, still ? before : { room, tolerance, skin: skinOf(room, tolerance, hasty) })
    }
    kept = next
    return [...next.values()].flatMap(({ skin }) => (skin ? [skin] : []))
  }
}

/** Rooms are the same where all their swings are. */
function sameRoom(a: Room, b: Room): boolean {
  return (
    a.side === b.side &&
    JSON.stringify(a.lid) === JSON.stringify(b.lid) &&
    sameSlices(a.slices, b.slices) &&
    a.ends.length === b.ends.length &&
    a.ends.every((fan, i) => sameSlices(fan.slices, b.ends[i]!.slices))
  )
}

type Slices = Room['slices']

const sameSlices = (a: Slices, b: Slices): boolean =>
  a.length === b.length &&
  a.every((s, i) => {
    const t = b[i]!
    return (
      s.x === t.x &&
      s.y === t.y &&
      s.z === t.z &&
      s.dx === t.dx &&
      s.dy === t.dy &&
      s.radius === t.radius &&
      s.reach === t.reach
    )
  })
