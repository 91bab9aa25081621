/** Closed surfaces as one GLB file: a mesh for each by its name, metres, y up as the format wants it. */
import { Document, WebIO } from '@gltf-transform/core'
import type { Solid } from './solid'

/** The file's bytes; null for no surface. */
export async function solidsGlb(solids: readonly Solid[], title: string): Promise<Uint8Array | null> {
  if (solids.length === 0) return null
  const document = new Document()
  document.getRoot().getAsset().generator = 'Fallroom'
  const buffer = document.createBuffer()
  const scene = document.createScene(title)
  const material = document
    .createMaterial('Fall room')
    .setBaseColorFactor([0, 0.18, 0.45, 0.35])
    .setAlphaMode('BLEND')
    .setDoubleSided(true)
  for (const solid of solids) {
    const primitive = document
      .createPrimitive()
      .setIndices(
        document.createAccessor().setType('SCALAR').setArray(solid.indices.slice()).setBuffer(buffer),
      )
      .setAttribute(
        'POSITION',
        document.createAccessor().setType('VEC3').setArray(turned(solid)).setBuffer(buffer),
      )
      .setMaterial(material)
    const mesh = document.createMesh(solid.name).addPrimitive(primitive)
    scene.addChild(document.createNode(solid.name).setMesh(mesh))
  }
  return new WebIO().writeBinary(document)
}

/** From z up to y up: x, z, -y. */
function turned({ positions }: Solid): Float32Array<ArrayBuffer> {
  const out = new Float32Array(positions.length)
  for (let i = 0; i < out.length; i += 3) {
    out[i] = positions[i]!
    out[i + 1] = positions[i + 2]!
    out[i + 2] = -positions[i + 1]!
  }
  return out
}
