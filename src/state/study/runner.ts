/** One study worker as seen from the window: newest plan wins, a worker that died is started again and says so. */
import * as Comlink from 'comlink'
import type { ReadModel } from '../../geometry/gaps'
import type { Skin } from '../../geometry/room/skin/skin'
import type { Plan } from '../../plan/types'
import type { Explained } from '../../solver/explain'
import type { ClashDetail, ClashPlace } from '../../study/clash-detail'
import type { LineDetail } from '../../study/details'
import type { LineResults } from '../../study/results'
import { handModels } from '../models/hand'
import { tellingUntilDone } from '../worker-progress'
import type { Studied, StudiedSent, StudyJob, StudyWorker } from './study-worker'
import { receiver } from './unchanged'

export type Outcome =
  | { kind: 'done'; plan: Plan; studied: Studied; restarted: boolean }
  | { kind: 'skins'; plan: Plan; skins: Skin[] }
  | { kind: 'failed'; plan: Plan; why: string }

/** While newer plans keep coming the rooms' surfaces are made this often only, ms: figures come first. */
const SKINS_EVERY = 600

export interface Runner {
  /**
   * Studies this plan as soon as the one before is done; only the newest that waits is kept. `anew`: also where this very
   * plan is being studied, since something beside it has changed, such as a model that was read only now.
   */
  want(plan: Plan, anew?: boolean): void
  /** The detail of a clash, of the last study that this worker made; null where there is none. */
  clash(at: ClashPlace): Promise<ClashDetail | null>
  /** The sum behind a finding of that study. */
  why(rule: string, subject: string): Promise<Explained | null>
  /** Lets go of what runs, at its next line, and of what waits; the worker and what it keeps stay. */
  hold(): void
  /** Gives up what runs and what waits. */
  stop(): void
  close(): void
}

interface Live {
  worker: Worker
  api: Comlink.Remote<StudyWorker>
  /** Models that this worker has. */
  models: Map<string, ReadModel>
  /** Puts together what came over, from what changed and what came before. */
  whole: (sent: StudiedSent) => Studied
  skins: ReturnType<typeof receiver<Skin>>
}

function wholeStudies(): Live['whole'] {
  const [lines, details] = [receiver<LineResults>(), receiver<LineDetail>()]
  return (sent) => ({
    results: { ...sent.results, lines: lines(sent.results.lines) },
    details: details(sent.details),
  })
}

export function createRunner(
  job: () => StudyJob,
  told: (outcome: Outcome) => void,
  progress: (done: number, what: string) => void,
  /** A newer plan stops the running study; without it the running one is finished first, so that a drag shows numbers. */
  interrupt: boolean,
  makeWorker: () => Worker = () =>
    new Worker(new URL('./study-worker.ts', import.meta.url), { type: 'module' }),
): Runner {
  let live: Live | null = null
  let running: Plan | null = null
  let waiting: Plan | null = null
  let restarted = false
  let stopping = false
  let skinsAt = 0

  const start = (): Live => {
    const worker = makeWorker()
    const started = {
      worker,
      api: Comlink.wrap<StudyWorker>(worker),
      models: new Map(),
      whole: wholeStudies(),
      skins: receiver<Skin>(),
    }
    worker.onerror = (event) =>
      died(started, event.message || 'the study stopped for a reason it did not tell')
    return started
  }

  const died = (which: Live, why: string): void => {
    if (which !== live) return
    which.worker.terminate()
    live = null
    restarted = true
    const plan = running
    running = null
    if (plan) told({ kind: 'failed', plan, why })
    next()
  }

  const next = (): void => {
    if (running || !waiting) return
    const plan = waiting
    waiting = null
    running = plan
    stopping = false
    live ??= start()
    void work(live, plan)
  }

  const work = async (at: Live, plan: Plan): Promise<void> => {
    try {
      await handModels(at.api, at.models)
      const sent = await tellingUntilDone(progress, (heard) => at.api.run(plan, job(), heard))
      if (at !== live) return
      if (sent) {
        told({ kind: 'done', plan, studied: at.whole(sent), restarted })
        restarted = false
        await showSkins(at, plan)
        if (at !== live) return
      }
      running = null
    } catch (error) {
      if (at !== live) return
      running = null
      told({ kind: 'failed', plan, why: error instanceof Error ? error.message : String(error) })
    }
    next()
  }

  const showSkins = async (at: Live, plan: Plan): Promise<void> => {
    if (waiting && performance.now() - skinsAt < SKINS_EVERY) return
    const skins = at.skins(await at.api.skins(!interrupt))
    skinsAt = performance.now()
    if (at === live) told({ kind: 'skins', plan, skins })
  }

  /** Stops between two lines; what was asked for stays where nothing newer comes. */
  const interruptIt = (): void => {
    stopping = true
    void live?.api.stop()
  }

  return {
    want: (plan, anew = false) => {
      waiting = plan === running && !stopping && !anew ? null : plan
      if (!running) next()
      else if (waiting && interrupt) interruptIt()
    },
    hold: () => {
      waiting = null
      if (running) interruptIt()
    },
    clash: async (at) => (live ? await live.api.clash(at) : null),
    why: async (rule, subject) => (live ? await live.api.why(rule, subject) : null),
    stop: () => {
      waiting = null
      running = null
      live?.worker.terminate()
      live = null
    },
    close: () => {
      live?.worker.terminate()
      live = null
    },
  }
}
