/**
 * Makes samples/access-tower.glb: an access tower of plain boxes, 2 m square and 4 m high, metres, y up. Nothing in it
 * comes from anywhere else.
 */
import { writeFile } from 'node:fs/promises'
import { Document, WebIO } from '@gltf-transform/core'

type Vec3 = [number, number, number]

/** Low and high corner of every box, z up. */
function boxes(): [Vec3, Vec3][] {
  const made: [Vec3, Vec3][] = []
  for (const x of [-0.95, 0.95]) {
    for (const y of [-0.95, 0.95])
      made.push([
        [x - 0.05, y - 0.05, 0],
        [x + 0.05, y + 0.05, 4],
      ])
  }
  for (const z of [0.3, 1.9, 2.9])
    made.push([
      [-1, -1, z],
      [1, 1, z + 0.06],
    ])
  for (const z of [3.4, 3.95]) {
    for (const s of [-1, 1]) {
      made.push([
        [-1, s * 0.95 - 0.025, z],
        [1, s * 0.95 + 0.025, z + 0.05],
      ])
      made.push([
        [s * 0.95 - 0.025, -1, z],
        [s * 0.95 + 0.025, 1, z + 0.05],
      ])
    }
  }
  return made
}

const faces = [
  [0, 2, 3, 1],
  [4, 5, 7, 6],
  [0, 1, 5, 4],
  [2, 6, 7, 3],
  [0, 4, 6, 2],
  [1, 3, 7, 5],
] as const

/** Corners of a box's triangles in the file's axes: x, z, -y. */
function corners([low, high]: [Vec3, Vec3]): number[] {
  const at = (i: number): number[] => {
    const [x, y, z] = [0, 1, 2].map((k) => ((i >> k) & 1 ? high[k as 0] : low[k as 0]))
    return [x!, z!, -y!]
  }
  return faces.flatMap(([p, q, r, s]) => [p, q, r, p, r, s].flatMap(at))
}

const document = new Document()
document.getRoot().getAsset().generator = 'Fallroom'
const positions = Float32Array.from(boxes().flatMap(corners))
const accessor = document
  .createAccessor()
  .setType('VEC3')
  .setArray(positions)
  .setBuffer(document.createBuffer())
const mesh = document
  .createMesh('access tower')
  .addPrimitive(document.createPrimitive().setAttribute('POSITION', accessor))
document.createScene().addChild(document.createNode('access tower').setMesh(mesh))
new WebIO()
  .writeBinary(document)
  .then((bytes) => writeFile(new URL('../samples/access-tower.glb', import.meta.url), bytes))
  .catch((error: unknown) => {
    console.error(error)
    process.exitCode = 1
  })
