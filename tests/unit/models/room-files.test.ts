import { WebIO } from '@gltf-transform/core'
import { describe, expect, it } from 'vitest'
import { skinOf } from '../../../src/geometry/room'
import { volumeOf } from '../../../src/geometry/room/skin/skin'
import { roomFiles } from '../../../src/handover/room/files'
import { readModel } from '../../../src/models/read'
import { testGirder, testInput, testRoom } from '../room/rooms'

const girder = testGirder('G1', [0, 0, 18], [20, 0, 18])
const corners = testInput(girder, [2, 10]).corners.slice(0, 2)
const room = testRoom(girder, [2, 10], { corners })
/** The same line on a neighbour 1 m away: the two rooms overlap. */
const beside = testGirder('G2', [0, 1, 18], [20, 1, 18])
const other = testRoom(beside, [2, 10], { corners })

/** Volume within loose triangles, m3. */
const volume = (triangles: Float32Array): number =>
  volumeOf(
    triangles,
    Uint32Array.from({ length: triangles.length / 3 }, (_, i) => i),
  )

async function readBack(name: string, rooms = [room, other]) {
  const files = await roomFiles(rooms, (id) => id)
  const read = await readModel(name, files.find((f) => f.name === name)!.bytes)
  if (!read.ok) throw new Error(read.why)
  return read.value
}

describe('files of the fall room', () => {
  it.each(['fall-room.stl', 'fall-room.glb'])('%s of one line is read back with its volume', async (name) => {
    const read = await readBack(name, [room])
    const skin = skinOf(room)!
    expect(volume(read.triangles) / skin.volume).toBeCloseTo(1, 3)
    expect(read.low[name.endsWith('glb') ? 1 : 2]).toBeCloseTo(skin.lowest![2], 2)
  })

  it('those of two lines count what both need once; by line they stand as they are', async () => {
    const sum = skinOf(room)!.volume + skinOf(other)!.volume
    const [stl, glb, lines] = await Promise.all(
      ['fall-room.stl', 'fall-room.glb', 'fall-room-lines.glb'].map((name) => readBack(name)),
    )
    expect(volume(lines!.triangles) / sum).toBeCloseTo(1, 3)
    expect(volume(stl!.triangles)).toBeLessThan(0.9 * sum)
    expect(volume(glb!.triangles) / volume(stl!.triangles)).toBeCloseTo(1, 5)
  })

  it('names each line, for another reader of the format', async () => {
    const files = await roomFiles([room, other], (id) => `the ${id}`)
    const document = await new WebIO().readBinary(files.find((f) => f.name === 'fall-room-lines.glb')!.bytes)
    const meshes = document.getRoot().listMeshes()
    expect(meshes.map((m) => m.getName())).toEqual(['the L-G1', 'the L-G2'])
    const positions = meshes[0]!.listPrimitives()[0]!.getAttribute('POSITION')!
    expect(positions.getCount()).toBe(skinOf(room)!.positions.length / 3)
  })

  it('there is none of no room', async () => {
    expect(await roomFiles([], (id) => id)).toEqual([])
  })
})
