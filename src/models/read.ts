/** Reads a model file of any kind that is known here, by its name's ending. Never throws, fetches nothing. */
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex } from '@noble/hashes/utils.js'
import { readIfc } from './ifc/geometry'
import { inspect } from './inspect'
import { readGlb, readGltf } from './readers/gltf'
import { readObj, readPly, readStl } from './readers/plain'
import { damaged, type ModelRead, type RawRead, type ReadOptions, unread } from './types'

const MODEL_ENDINGS = ['glb', 'gltf', 'obj', 'stl', 'ply', 'ifc'] as const

const readers: Record<string, (bytes: Uint8Array, options: ReadOptions) => RawRead | Promise<RawRead>> = {
  glb: readGlb,
  gltf: readGltf,
  obj: readObj,
  stl: readStl,
  ply: readPly,
  ifc: readIfc,
}

/** Reads and looks over a model file; every reason not to is told in plain words. */
export async function readModel(
  name: string,
  bytes: Uint8Array,
  options: ReadOptions = {},
): Promise<ModelRead> {
  const ending = /\.([a-z0-9]+)$/i.exec(name)?.[1]?.toLowerCase() ?? ''
  const reader = readers[ending]
  if (!reader) return unread(`${name}: models are read from ${MODEL_ENDINGS.join(', ')}`)
  if (bytes.length === 0) return unread(`${name} is empty`)
  let raw: RawRead
  try {
    raw = await reader(bytes, options)
  } catch (error) {
    raw = unread(`the file ${damaged(error)}`)
  }
  if (!raw.ok) return unread(`${name}: ${raw.why}`)
  const seen = inspect(raw.value.triangles)
  if (!seen.ok) return unread(`${name}: ${seen.why}`)
  const { triangles, upAxis, metresPerUnit, notes = [] } = raw.value
  const { low, high } = seen.value
  const hash = bytesToHex(sha256(bytes))
  return {
    ok: true,
    value: { triangles, low, high, notes: [...notes, ...seen.value.notes], upAxis, metresPerUnit, hash },
  }
}
