/** The papers' worker as seen from the window: started when first needed, one piece of work at a time, stopped at will. */
import * as Comlink from 'comlink'
import { tellingUntilDone } from '../../state/worker-progress'
import type { PapersWorker, Progress } from './papers-worker'

export type Made<T> = { ok: true; value: T } | { ok: false; why: string }

interface Live {
  worker: Worker
  api: Comlink.Remote<PapersWorker>
  /** Tells a call that waits that nothing will come. */
  give: ((why: string) => void) | null
}

let live: Live | null = null

const start = (): Live => {
  const worker = new Worker(new URL('./papers-worker.ts', import.meta.url), { type: 'module' })
  const made: Live = { worker, api: Comlink.wrap<PapersWorker>(worker), give: null }
  worker.onerror = (event) => end(made, event.message || 'the work stopped for a reason it did not tell')
  return made
}

function end(which: Live, why: string): void {
  which.worker.terminate()
  if (live === which) live = null
  which.give?.(why)
}

/** Gives up what is being made. */
export function stopPapers(): void {
  if (live) end(live, 'stopped')
}

/** Does one thing in the worker; failures come back in words. */
export function inPapersWorker<T>(
  work: (api: Comlink.Remote<PapersWorker>, progress: Progress) => Promise<T>,
  progress: Progress,
): Promise<Made<T>> {
  live ??= start()
  const at = live
  return new Promise((resolve) => {
    at.give = (why) => resolve({ ok: false, why })
    tellingUntilDone(progress, (told) => work(at.api, told)).then(
      (value) => resolve({ ok: true, value }),
      (error) => resolve({ ok: false, why: error instanceof Error ? error.message : String(error) }),
    )
  })
}
