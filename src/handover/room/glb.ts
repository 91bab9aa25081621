/** The fall rooms as one GLB file: a closed mesh for each line, metres, y up as the format wants it. */
import { Document, WebIO } from '@gltf-transform/core'
import type { Skin } from '../../geometry/room'
import { type Room, skinOf } from '../../geometry/room'

/** The file's bytes; null where no line has a room that is known. */
export async function roomsGlb(
  rooms: readonly Room[],
  nameOf: (line: string) => string,
): Promise<Uint8Array | null> {
  const skins = rooms.flatMap((room) => skinOf(room) ?? [])
  if (skins.length === 0) return null
  const document = new Document()
  document.getRoot().getAsset().generator = 'Fallroom'
  const buffer = document.createBuffer()
  const scene = document.createScene('Fall rooms')
  const material = document
    .createMaterial('Fall room')
    .setBaseColorFactor([0, 0.18, 0.45, 0.35])
    .setAlphaMode('BLEND')
    .setDoubleSided(true)
  for (const skin of skins) {
    const primitive = document
      .createPrimitive()
      .setIndices(
        document.createAccessor().setType('SCALAR').setArray(skin.indices.slice()).setBuffer(buffer),
      )
      .setAttribute(
        'POSITION',
        document.createAccessor().setType('VEC3').setArray(turned(skin)).setBuffer(buffer),
      )
      .setMaterial(material)
    const mesh = document.createMesh(nameOf(skin.line)).addPrimitive(primitive)
    scene.addChild(document.createNode(nameOf(skin.line)).setMesh(mesh))
  }
  return new WebIO().writeBinary(document)
}

/** From z up to y up: x, z, -y. */
function turned(skin: Skin): Float32Array<ArrayBuffer> {
  const out = new Float32Array(skin.positions.length)
  for (let i = 0; i < out.length; i += 3) {
    out[i] = skin.positions[i]!
    out[i + 1] = skin.positions[i + 2]!
    out[i + 2] = -skin.positions[i + 1]!
  }
  return out
}
