/** The fall's worker as seen from the window. The newest request wins; giving one up ends the worker that is at it. */
import * as Comlink from 'comlink'
import type { ReadModel } from '../../geometry/gaps'
import type { Plan } from '../../plan/types'
import type { DropRequest } from '../../study/drop'
import { handModels } from '../models/hand'
import { tellingUntilDone } from '../worker-progress'
import type { DropReply, FallWorker } from './fall-worker'

interface Live {
  worker: Worker
  api: Comlink.Remote<FallWorker>
  busy: boolean
  /** Models that this worker has. */
  models: Map<string, ReadModel>
}

let live: Live | null = null

const start = (): Live => {
  const worker = new Worker(new URL('./fall-worker.ts', import.meta.url), { type: 'module' })
  return { worker, api: Comlink.wrap<FallWorker>(worker), busy: false, models: new Map() }
}

/** Gives up the fall that is being computed. */
export function stopFall(): void {
  if (!live?.busy) return
  live.worker.terminate()
  live = null
}

/** Computes a fall; null where a newer one or `stopFall` came in between. */
export async function computeFall(
  plan: Plan,
  request: DropRequest,
  progress: (done: number) => void,
): Promise<DropReply | null> {
  stopFall()
  live ??= start()
  const mine = live
  mine.busy = true
  try {
    await handModels(mine.api, mine.models)
    if (mine !== live) return null
    const reply = await Promise.race([
      tellingUntilDone(progress, (told) => mine.api.drop(plan, request, told) as Promise<DropReply>),
      deathOf(mine.worker),
    ])
    return mine === live ? reply : null
  } catch (error) {
    if (mine !== live) return null
    mine.worker.terminate()
    live = null
    return { ok: false, why: error instanceof Error ? error.message : String(error) }
  } finally {
    mine.busy = false
  }
}

/** A worker that breaks answers nothing: its error does. */
const deathOf = (worker: Worker): Promise<never> =>
  new Promise((_, reject) => {
    worker.onerror = (event) =>
      reject(new Error(event.message || 'the computation stopped for a reason it did not tell'))
  })
