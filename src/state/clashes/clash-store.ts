/** The Clashes view: what is chosen, how it is filtered, and what was found that would clear it. */
import * as Comlink from 'comlink'
import { create } from 'zustand'
import type { ClearWay } from '../../study/clear'
import { look } from '../actions'
import { tell } from '../ask'
import { modelsForStudy } from '../models/model-store'
import { app } from '../store'
import type { ClashFilter } from './clash-list'
import type { ClearWorker } from './clear-worker'

export interface Clearing {
  obstacle: string
  line: string
  state: 'running' | 'done' | 'failed'
  share: number
  ways: ClearWay[]
  why: string
  /** The plan that the ways belong to. */
  of: object
}

export const clashStore = create<{ chosen: string | null; filter: ClashFilter; clearing: Clearing | null }>()(
  () => ({
    chosen: null,
    filter: { line: null, near: 'all', text: '' },
    clearing: null,
  }),
)

export const setFilter = (part: Partial<ClashFilter>): void =>
  clashStore.setState((s) => ({ filter: { ...s.filter, ...part } }))

/** Chooses an obstacle, selects it and flies to the worst place. */
export function chooseClash(id: string): void {
  clashStore.setState({ chosen: id })
  const { plan, study, tapeLine } = app.getState()
  const result = study.results?.obstacles.find((o) => o.id === id)
  const kind = plan.girders.some((g) => g.id === id) ? 'girder' : 'obstacle'
  app.setState({ selection: [{ kind, id }], tapeLine: result?.line ?? tapeLine })
  if (result?.at) look({ point: result.at })
  else look({ ref: { kind, id } })
}

let worker: Worker | null = null

/** Starts looking for what would clear an obstacle; what was being looked for before is given up. */
export function findClearing(obstacle: string, line: string): void {
  stopClearing()
  const { plan, study } = app.getState()
  const fresh: Clearing = { obstacle, line, state: 'running', share: 0, ways: [], why: '', of: plan }
  clashStore.setState({ clearing: fresh })
  const change = (part: Partial<Clearing>): void =>
    clashStore.setState(({ clearing }) => ({
      clearing: clearing?.of === plan && clearing.obstacle === obstacle ? { ...clearing, ...part } : clearing,
    }))
  const own = new Worker(new URL('./clear-worker.ts', import.meta.url), { type: 'module' })
  worker = own
  own.onerror = (event) => change({ state: 'failed', why: event.message })
  const told = (way: ClearWay | null, share: number): void => {
    const before = clashStore.getState().clearing?.ways ?? []
    change({ share, ...(way ? { ways: [...before, way] } : {}) })
  }
  Comlink.wrap<ClearWorker>(own)
    .find({ plan, obstacle, line }, study.results, modelsForStudy(), Comlink.proxy(told))
    .then(() => change({ state: 'done', share: 1 }))
    .catch((error: unknown) => change({ state: 'failed', why: String(error) }))
    .finally(() => own.terminate())
}

export function stopClearing(): void {
  worker?.terminate()
  worker = null
  clashStore.setState({ clearing: null })
}

/** Makes a found change in the plan, as one step that can be undone. */
export function takeWay(way: ClearWay): void {
  const { clearing } = clashStore.getState()
  if (clearing?.of !== app.getState().plan) {
    tell('The plan has changed since this was computed. Compute it again.', 'look')
    return
  }
  app.setState({ plan: way.plan, edited: 'clear an obstacle' })
  clashStore.setState({ clearing: null })
}
