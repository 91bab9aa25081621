import { describe, expect, it } from 'vitest'
import { skinOf } from '../../../src/geometry/room'
import { volumeOf } from '../../../src/geometry/room/skin/skin'
import { roomsGlb } from '../../../src/handover/files/glb'
import { roomsStl } from '../../../src/handover/files/stl'
import { readModel } from '../../../src/models/read'
import { testGirder, testInput, testRoom } from '../room/rooms'

const girder = testGirder('G1', [0, 0, 18], [20, 0, 18])
const room = testRoom(girder, [2, 10], { corners: testInput(girder, [2, 10]).corners.slice(0, 2) })

/** Volume within loose triangles, m3. */
const volume = (triangles: Float32Array): number =>
  volumeOf(
    triangles,
    Uint32Array.from({ length: triangles.length / 3 }, (_, i) => i),
  )

describe('files of the fall room', () => {
  it.each([
    ['room.stl', async () => roomsStl([room])],
    ['room.glb', () => roomsGlb([room], (id) => id)],
  ])('%s is read back as what it was: its size and its volume', async (name, make) => {
    const read = await readModel(name, (await make())!)
    if (!read.ok) throw new Error(read.why)
    const skin = skinOf(room)!
    expect(read.value.triangles.length).toBe(skin.indices.length * 3)
    expect(volume(read.value.triangles) / skin.volume).toBeCloseTo(1, 4)
    const up = name.endsWith('glb') ? 1 : 2
    expect(read.value.low[up]).toBeCloseTo(skin.lowest![2], 2)
  })

  it('there is none of no room', async () => {
    expect(roomsStl([])).toBeNull()
    expect(await roomsGlb([], (id) => id)).toBeNull()
  })
})
