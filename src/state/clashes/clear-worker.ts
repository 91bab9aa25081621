/** What would clear an obstacle, computed in a worker: every try is a study of the line. */
import * as Comlink from 'comlink'
import { type ClearTask, type ClearWay, clearWays } from '../../study/clear'
import type { Models } from '../../study/obstacles'
import type { Results } from '../../study/results'

async function find(
  task: ClearTask,
  results: Results | null,
  models: Models,
  told: (way: ClearWay | null, share: number) => void,
): Promise<void> {
  for (const step of clearWays(task, results, models)) await told(step.way, step.share)
}

const worker = { find }

export type ClearWorker = typeof worker

Comlink.expose(worker)
