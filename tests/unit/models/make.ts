/** Models for tests, made here: boxes in every format that is read. */
import { Document, WebIO } from '@gltf-transform/core'

export type Corner = [number, number, number]

/** Twelve triangles of a box, counter-clockwise from outside. */
export function boxTriangles(low: Corner, high: Corner): [Corner, Corner, Corner][] {
  const c = (i: number): Corner => [
    i & 1 ? high[0] : low[0],
    i & 2 ? high[1] : low[1],
    i & 4 ? high[2] : low[2],
  ]
  const faces = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ]
  return faces.flatMap(([p, q, r, s]): [Corner, Corner, Corner][] => [
    [c(p!), c(q!), c(r!)],
    [c(p!), c(r!), c(s!)],
  ])
}

type Triangles = [Corner, Corner, Corner][]

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text)

export function obj(triangles: Triangles): Uint8Array {
  const corners = triangles.flat().map((p) => `v ${p.join(' ')}`)
  const faces = triangles.map((_, i) => `f ${3 * i + 1} ${3 * i + 2} ${3 * i + 3}`)
  return bytesOf(['# a test model', ...corners, ...faces, ''].join('\n'))
}

export function stlText(triangles: Triangles): Uint8Array {
  const facet = (t: Corner[]): string =>
    `facet normal 0 0 0\nouter loop\n${t.map((p) => `vertex ${p.join(' ')}`).join('\n')}\nendloop\nendfacet`
  return bytesOf(`solid test\n${triangles.map(facet).join('\n')}\nendsolid test\n`)
}

export function stl(triangles: Triangles): Uint8Array {
  const view = new DataView(new ArrayBuffer(84 + 50 * triangles.length))
  view.setUint32(80, triangles.length, true)
  triangles.forEach((t, i) => {
    t.flat().forEach((v, k) => {
      view.setFloat32(84 + 50 * i + 12 + 4 * k, v, true)
    })
  })
  return new Uint8Array(view.buffer)
}

export function ply(triangles: Triangles): Uint8Array {
  const corners = triangles.flat()
  const head = `ply\nformat ascii 1.0\nelement vertex ${corners.length}\nproperty float x\nproperty float y\nproperty float z\nelement face ${triangles.length}\nproperty list uchar int vertex_indices\nend_header\n`
  const faces = triangles.map((_, i) => `3 ${3 * i} ${3 * i + 1} ${3 * i + 2}`)
  return bytesOf(`${head}${corners.map((p) => p.join(' ')).join('\n')}\n${faces.join('\n')}\n`)
}

/** A GLB whose node is moved by `shift`. */
export async function glb(triangles: Triangles, shift: Corner = [0, 0, 0]): Promise<Uint8Array> {
  const document = new Document()
  const buffer = document.createBuffer()
  const position = document
    .createAccessor()
    .setType('VEC3')
    .setArray(Float32Array.from(triangles.flat(2)))
    .setBuffer(buffer)
  const mesh = document
    .createMesh()
    .addPrimitive(document.createPrimitive().setAttribute('POSITION', position))
  document.createScene().addChild(document.createNode().setMesh(mesh).setTranslation(shift))
  return new WebIO().writeBinary(document)
}
