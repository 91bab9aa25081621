/** OBJ, STL and PLY by the loaders that come with three. */
import { type BufferGeometry, Mesh } from 'three'
import { OBJLoader } from 'three/addons/loaders/OBJLoader.js'
import { PLYLoader } from 'three/addons/loaders/PLYLoader.js'
import { STLLoader } from 'three/addons/loaders/STLLoader.js'
import { TriangleCollector } from '../collect'
import { type RawRead, unread } from '../types'

const exactBuffer = (bytes: Uint8Array): ArrayBuffer =>
  bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer

function fromGeometries(geometries: BufferGeometry[]): RawRead {
  const collector = new TriangleCollector()
  for (const geometry of geometries) {
    const position = geometry.getAttribute('position')
    if (position) collector.add(position.array, 3, geometry.getIndex()?.array ?? null, null)
  }
  return { ok: true, value: { triangles: collector.triangles(), upAxis: 'z', metresPerUnit: null } }
}

/** Wavefront OBJ. Materials are never looked for. */
export function readObj(bytes: Uint8Array): RawRead {
  const text = new TextDecoder().decode(bytes)
  if (!/^\s*v\s/m.test(text)) return unread('the OBJ file has no corners (no line that begins with v)')
  const bad = /^\s*v\s.*\b(nan|inf)/im.exec(text)
  if (bad) return unread(`the OBJ file has a corner that is no number, at line ${lineOf(text, bad.index)}`)
  const meshes: BufferGeometry[] = []
  new OBJLoader().parse(text).traverse((o) => {
    if (o instanceof Mesh) meshes.push(o.geometry)
  })
  const read = fromGeometries(meshes)
  // Every corner given is a number, so one that is none belongs to a face that names a corner too many.
  const lost = read.ok && read.value.triangles.some((v) => Number.isNaN(v))
  return lost ? unread('a face of the OBJ file names a corner that is not there') : read
}

const lineOf = (text: string, index: number): number =>
  text
    .slice(0, index + 1)
    .trimEnd()
    .split('\n').length + (text[index] === '\n' ? 1 : 0)

/** STL, text or binary. */
export function readStl(bytes: Uint8Array): RawRead {
  const head = new TextDecoder().decode(bytes.subarray(0, 512))
  const isText = /^\s*solid\b/.test(head) && head.includes('facet')
  if (!isText) {
    if (bytes.length < 84) return unread('the STL file is cut short: it has not even a head')
    const count = new DataView(bytes.buffer, bytes.byteOffset).getUint32(80, true)
    const needed = 84 + count * 50
    if (needed > bytes.length) {
      return unread(
        `the STL file is cut short: ${count} triangles need ${needed} bytes, it has ${bytes.length}`,
      )
    }
  } else if (!/endsolid/.test(new TextDecoder().decode(bytes.subarray(-512)))) {
    return unread('the STL file is cut short: it does not end with endsolid')
  }
  return fromGeometries([new STLLoader().parse(exactBuffer(bytes))])
}

/** PLY, text or binary. */
export function readPly(bytes: Uint8Array): RawRead {
  const head = new TextDecoder().decode(bytes.subarray(0, 4096))
  if (!/^ply\s/.test(head)) return unread('the file is no PLY: it does not begin like one')
  if (!head.includes('end_header')) return unread('the PLY file is cut short: its head does not end')
  const faces = /element\s+face\s+(\d+)/.exec(head)
  if (!faces || faces[1] === '0') return unread('the PLY file holds points without triangles between them')
  const geometry = new PLYLoader().parse(exactBuffer(bytes))
  return fromGeometries([geometry])
}
