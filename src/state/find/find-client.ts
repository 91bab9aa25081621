/** The one search, mending, spread or exploration that runs, and what the last of each said. */
import * as Comlink from 'comlink'
import { create } from 'zustand'
import type { Plan } from '../../plan/types'
import type { ExplorePoint, ExploreTask } from '../../study/explore/explore'
import { withLayout } from '../../study/find/layout'
import { placesOf } from '../../study/find/places'
import type { Candidate, FindProgress, FindResult, FindTask } from '../../study/find/types'
import type { Mending } from '../../study/mend/mend'
import type { SpreadResult, SpreadTask } from '../../study/spread/types'
import { tell } from '../ask'
import { edit } from '../edit'
import { modelsForStudy } from '../models/model-store'
import { app } from '../store'
import type { FindingKey } from '../window-state'
import { tellingUntilDone } from '../worker-progress'
import type { FindWorker } from './find-worker'

export type Work = 'find' | 'mend' | 'spread' | 'explore'

interface FindState {
  running: Work | null
  done: number
  doing: string
  /** Why the last work ended without a result. */
  error: string | null
  find: { plan: Plan; line: string; result: FindResult | null; progress: FindProgress | null } | null
  mend: { plan: Plan; finding: FindingKey; found: Mending[]; whole: boolean } | null
  spread: { plan: Plan; line: string; result: SpreadResult } | null
  explore: { task: ExploreTask; points: ExplorePoint[] } | null
}

export const useFind = create<FindState>()(() => ({
  running: null,
  done: 0,
  doing: '',
  error: null,
  find: null,
  mend: null,
  spread: null,
  explore: null,
}))

let live: { worker: Worker; api: Comlink.Remote<FindWorker> } | null = null
let turn = 0

function start(): Comlink.Remote<FindWorker> {
  if (live) return live.api
  const worker = new Worker(new URL('./find-worker.ts', import.meta.url), { type: 'module' })
  worker.onerror = (event) => end(event.message || 'The search stopped for a reason it did not tell.')
  live = { worker, api: Comlink.wrap<FindWorker>(worker) }
  return live.api
}

/** Ends whatever runs; what was found so far stays. */
function end(error: string | null): void {
  turn++
  live?.worker.terminate()
  live = null
  useFind.setState({ running: null, error })
}

export const stopWork = (): void => end(null)

async function work<R>(
  kind: Work,
  doing: string,
  run: (api: Comlink.Remote<FindWorker>, on: () => boolean) => Promise<R>,
): Promise<R | null> {
  if (useFind.getState().running) end(null)
  const mine = ++turn
  useFind.setState({ running: kind, done: 0, doing, error: null })
  try {
    const result = await run(start(), () => mine === turn)
    if (mine !== turn) return null
    useFind.setState({ running: null, done: 1 })
    return result
  } catch (error) {
    if (mine === turn) end(error instanceof Error ? error.message : String(error))
    return null
  }
}

export async function runFind(task: FindTask): Promise<void> {
  const { plan, line } = task
  useFind.setState({ find: { plan, line, result: null, progress: null } })
  const result = await work('find', 'Bounding spans', (api, on) =>
    tellingUntilDone(
      (progress: FindProgress) => {
        const { done, doing } = progress
        if (on()) useFind.setState({ done, doing, find: { plan, line, result: null, progress } })
      },
      (told) => api.find(task, modelsForStudy(), told),
    ),
  )
  if (result) useFind.setState((s) => ({ find: { plan, line, result, progress: s.find?.progress ?? null } }))
}

export async function runMend(plan: Plan, finding: FindingKey & { line: string }): Promise<void> {
  useFind.setState({ mend: { plan, finding, found: [], whole: false } })
  const found = await work('mend', 'Computing the plan as it is', (api, on) =>
    tellingUntilDone(
      (done: number, doing: string, so: Mending[]) => {
        if (on()) useFind.setState({ done, doing, mend: { plan, finding, found: so, whole: false } })
      },
      (told) => api.mend(plan, finding, modelsForStudy(), told),
    ),
  )
  if (found) useFind.setState({ mend: { plan, finding, found, whole: true } })
}

const share = (on: () => boolean) => (done: number) => {
  if (on()) useFind.setState({ done })
}

export async function runSpread(task: SpreadTask): Promise<void> {
  const result = await work('spread', 'Computing samples', (api, on) =>
    tellingUntilDone(share(on), (told) => api.spread(task, modelsForStudy(), told)),
  )
  if (result) useFind.setState({ spread: { plan: task.plan, line: task.line, result } })
}

export async function runExplore(task: ExploreTask): Promise<void> {
  const points = await work('explore', 'Computing points', (api, on) =>
    tellingUntilDone(share(on), (told) => api.explore(task, modelsForStudy(), told)),
  )
  if (points) useFind.setState({ explore: { task, points } })
}

/** Puts a layout into the plan as one step; says so where the plan has changed since. */
export function applyLayout(lineId: string, candidate: Candidate): void {
  const { plan } = app.getState()
  const line = plan.lines.find((l) => l.id === lineId)
  const places = line && placesOf(plan, line)
  if (!line || !places) {
    tell('The line is not there any more, or its brackets lie in no row of loops.', 'fails')
    return
  }
  take(`lay out ${line.name || line.id}`, withLayout(plan, lineId, places.pattern, candidate.layout))
}

/** Puts a mended plan in place as one step. */
export function applyMending(mending: Mending): void {
  if (app.getState().plan !== useFind.getState().mend?.plan) {
    tell('The plan has changed since: compute the changes again.', 'look')
    return
  }
  take(`${mending.label[0]!.toLowerCase()}${mending.label.slice(1)}`, mending.plan)
}

function take(label: string, made: Plan): void {
  edit(label, (draft) => {
    draft.lines = made.lines
    draft.workers = made.workers
    draft.parts = made.parts
  })
}
