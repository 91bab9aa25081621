/** The files of the fall room: the whole plan's as one closed surface, and a closed surface for each line by name. */
import { type Room, skinOf } from '../../geometry/room'
import type { HandoverFile } from '../files/hand-over'
import { solidsGlb } from './glb'
import type { Solid } from './solid'
import { solidsStl } from './stl'
import { unite } from './unite'

const WHOLE = 'Fall room of the whole plan'

/** The surface of every room that has one. */
const roomSolids = (rooms: readonly Room[], nameOf: (line: string) => string): Solid[] =>
  rooms.flatMap((room) => {
    const skin = skinOf(room)
    return skin ? [{ name: nameOf(room.line), positions: skin.positions, indices: skin.indices }] : []
  })

/** Nothing where no line has a room. What could not be joined is told in a file of its own; the lines are there still. */
export async function roomFiles(
  rooms: readonly Room[],
  nameOf: (line: string) => string,
  engine?: string,
): Promise<HandoverFile[]> {
  const lines = roomSolids(rooms, nameOf)
  const glb = await solidsGlb(lines, 'Fall rooms of the lines')
  if (!glb) return []
  const byLine = { name: 'fall-room-lines.glb', bytes: glb }
  const whole = await unite(lines, WHOLE, engine)
  if (whole === null || typeof whole === 'string') return [byLine, notJoined(whole ?? 'it is empty')]
  const files = [
    { name: 'fall-room.glb', bytes: await solidsGlb([whole], WHOLE) },
    { name: 'fall-room.stl', bytes: solidsStl([whole]) },
  ]
  return [...files.flatMap(({ name, bytes }) => (bytes ? [{ name, bytes }] : [])), byLine]
}

const notJoined = (why: string): HandoverFile => ({
  name: 'fall-room-not-joined.txt',
  bytes: new TextEncoder().encode(
    `The fall rooms of the lines could not be joined to one surface: ${why}.\nThey stand in fall-room-lines.glb, each by itself.\n`,
  ),
})
