/** Searches, mending, spread and exploring in a worker of their own, so that the study of what is on screen stays quick. */
import * as Comlink from 'comlink'
import type { ReadModel } from '../../geometry/gaps'
import type { Plan } from '../../plan/types'
import { type ExplorePoint, type ExploreTask, explore } from '../../study/explore/explore'
import { search } from '../../study/find/search'
import type { FindProgress, FindResult, FindTask } from '../../study/find/types'
import { type Mending, mend } from '../../study/mend/mend'
import { spread } from '../../study/spread/spread'
import type { SpreadResult, SpreadTask } from '../../study/spread/types'
import type { FindingKey } from '../window-state'

type Models = ReadonlyMap<string, ReadModel>

let stopped = false

/** Lets messages in, so that a stop is heard. */
const breathe = (): Promise<void> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = () => {
      port1.close()
      resolve()
    }
    port2.postMessage(null)
  })

/** Tells at most this often, ms. */
const EVERY = 60

/** Drives a generator to its end, or null where it was stopped. */
async function drive<P, R>(steps: Generator<P, R>, tell: (p: P) => void): Promise<R | null> {
  stopped = false
  let told = 0
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
    if (performance.now() - told < EVERY) continue
    tell(step.value)
    await breathe()
    if (stopped) return null
    told = performance.now()
  }
}

const worker = {
  find: (task: FindTask, models: Models, tell: (p: FindProgress) => void): Promise<FindResult | null> =>
    drive(search(task, models), tell),
  mend: (
    plan: Plan,
    finding: FindingKey & { line: string },
    models: Models,
    tell: (done: number, doing: string, found: Mending[]) => void,
  ): Promise<Mending[] | null> =>
    drive(mend(plan, finding, { models }), (p) => tell(p.done, p.doing, p.found)),
  spread: (task: SpreadTask, models: Models, tell: (done: number) => void): Promise<SpreadResult | null> =>
    drive(spread(task, models), tell),
  explore: (
    task: ExploreTask,
    models: Models,
    tell: (done: number) => void,
  ): Promise<ExplorePoint[] | null> => drive(explore(task, models), tell),
  stop: (): void => {
    stopped = true
  },
}

export type FindWorker = typeof worker

Comlink.expose(worker)
