/** One worker that reads model files, started when first needed. */
import * as Comlink from 'comlink'
import type { ModelWorker } from '../../models/model-worker'
import type { ModelRead } from '../../models/types'
import { tellingUntilDone } from '../worker-progress'

let live: { worker: Worker; api: Comlink.Remote<ModelWorker> } | null = null

function api(): Comlink.Remote<ModelWorker> {
  if (!live) {
    const worker = new Worker(new URL('../../models/model-worker.ts', import.meta.url), { type: 'module' })
    live = { worker, api: Comlink.wrap<ModelWorker>(worker) }
  }
  return live.api
}

/** Rejects when the worker itself breaks, as it may on a file too large for the memory. */
function orBroken<T>(work: Promise<T>): Promise<T> {
  const { worker } = live!
  return new Promise((resolve, reject) => {
    const broken = (event: ErrorEvent): void => {
      live?.worker.terminate()
      live = null
      reject(new Error(event.message || 'the reader stopped'))
    }
    worker.addEventListener('error', broken, { once: true })
    work.then(resolve, reject).finally(() => worker.removeEventListener('error', broken))
  })
}

/** Reads a model file; whatever goes wrong is told. */
export async function readInWorker(
  name: string,
  bytes: Uint8Array,
  progress: (share: number, what: string) => void,
): Promise<ModelRead> {
  try {
    return await tellingUntilDone(progress, (told) =>
      orBroken(api().read(name, bytes, told) as Promise<ModelRead>),
    )
  } catch (error) {
    return {
      ok: false,
      why: `${name} could not be read: ${error instanceof Error ? error.message : String(error)}`,
    }
  }
}

/** The beams of an IFC file. */
export async function beamsInWorker(bytes: Uint8Array): Promise<Awaited<ReturnType<ModelWorker['beams']>>> {
  try {
    return await orBroken(api().beams(bytes) as ReturnType<ModelWorker['beams']>)
  } catch (error) {
    return { ok: false, why: error instanceof Error ? error.message : String(error) }
  }
}
