/** Models are read in a worker of their own: a large file never stops the window. */
import * as Comlink from 'comlink'
import ifcEngine from 'web-ifc/web-ifc.wasm?url'
import { type IfcBeam, readBeams } from './ifc/beams'
import { readModel } from './read'
import type { ModelRead } from './types'

type Progress = (share: number, what: string) => void

/** The engine's address as the page sees it: a worker's own may lie elsewhere. */
const engine = new URL(ifcEngine, self.location.href).href

async function read(name: string, bytes: Uint8Array, progress: Progress): Promise<ModelRead> {
  const got = await readModel(name, bytes, { ifcEngine: engine, progress })
  return got.ok ? Comlink.transfer(got, [got.value.triangles.buffer]) : got
}

const beams = (bytes: Uint8Array): Promise<{ ok: true; value: IfcBeam[] } | { ok: false; why: string }> =>
  readBeams(bytes, { ifcEngine: engine })

const worker = { read, beams }

export type ModelWorker = typeof worker

Comlink.expose(worker)
