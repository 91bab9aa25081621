/** glTF 2.0, binary (GLB) or text with everything inside it. Textures are never looked at, and nothing is fetched. */
import { type Document, type Node, type Primitive, WebIO } from '@gltf-transform/core'
import { TriangleCollector } from '../collect'
import { type RawRead, unread } from '../types'

const GLB_MAGIC = 0x46546c67
const TRIANGLES = 4

/** Reads a GLB file. */
export async function readGlb(bytes: Uint8Array): Promise<RawRead> {
  if (bytes.length < 20) return unread('the GLB file is cut short: it has not even a head')
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (view.getUint32(0, true) !== GLB_MAGIC) return unread('the file is no GLB: it does not begin like one')
  const told = view.getUint32(8, true)
  if (told > bytes.length) {
    return unread(`the GLB file is cut short: it should have ${told} bytes and has ${bytes.length}`)
  }
  return collect(() => new WebIO().readBinary(bytes))
}

/** Reads a .gltf file whose buffers are inside it. */
export async function readGltf(bytes: Uint8Array): Promise<RawRead> {
  let json: { buffers?: { uri?: string }[]; images?: unknown[]; textures?: unknown[] }
  try {
    json = JSON.parse(new TextDecoder().decode(bytes))
  } catch {
    return unread('the glTF file is no readable JSON: it is cut short or damaged')
  }
  const outside = (json.buffers ?? []).find((b) => b.uri !== undefined && !b.uri.startsWith('data:'))
  if (outside) return unread('the glTF file keeps its triangles in another file: save it as GLB')
  const resources = Object.fromEntries(
    (json.buffers ?? []).flatMap((b) => (b.uri ? [[b.uri, fromDataUri(b.uri)]] : [])),
  )
  const bare = { ...json, images: [], textures: [] }
  return collect(() => new WebIO().readJSON({ json: bare as never, resources }))
}

function fromDataUri(uri: string): Uint8Array<ArrayBuffer> {
  const text = atob(uri.slice(uri.indexOf(',') + 1))
  return Uint8Array.from(text, (c) => c.charCodeAt(0))
}

async function collect(open: () => Promise<Document>): Promise<RawRead> {
  try {
    const document = await open()
    const collector = new TriangleCollector()
    const left = new Set<number>()
    const scenes = document.getRoot().listScenes()
    const scene = document.getRoot().getDefaultScene() ?? scenes[0]
    const visit = (node: Node): void => {
      for (const primitive of node.getMesh()?.listPrimitives() ?? []) {
        if (primitive.getMode() === TRIANGLES) add(collector, node, primitive)
        else left.add(primitive.getMode())
      }
      node.listChildren().forEach(visit)
    }
    scene?.listChildren().forEach(visit)
    const notes = left.size > 0 ? ['lines, points, strips or fans in the file were left out'] : []
    return { ok: true, value: { triangles: collector.triangles(), upAxis: 'y', metresPerUnit: 1, notes } }
  } catch (error) {
    return unread(plainly(error))
  }
}

function add(collector: TriangleCollector, node: Node, primitive: Primitive): void {
  const positions = primitive.getAttribute('POSITION')?.getArray()
  if (!positions) return
  collector.add(positions, 3, primitive.getIndices()?.getArray() ?? null, node.getWorldMatrix())
}

function plainly(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error)
  if (/draco|meshopt/i.test(text))
    return 'the file packs its triangles (Draco or meshopt): save it without compression'
  return `the glTF file is damaged: ${text}`
}
