/** Asks the pretension worker: curves once for a line, then the state at hand; only the newest wish is computed. */
import * as Comlink from 'comlink'
import type { Plan } from '../../plan/types'
import type { PretensionWorker } from './pretension-worker'
import { type TeachState, teachStore } from './teach-store'

interface Wish {
  plan: Plan
  line: string
  pretension: number
  absorber: boolean
}

let api: Comlink.Remote<PretensionWorker> | null = null
let busy = false
let waiting: Wish | null = null
/** Setups are of one plan and line; an answer to an older question is dropped. */
let asked = 0

const remote = (): Comlink.Remote<PretensionWorker> => {
  api ??= Comlink.wrap<PretensionWorker>(
    new Worker(new URL('./pretension-worker.ts', import.meta.url), { type: 'module' }),
  )
  return api
}

const set = (part: Partial<TeachState['pretension']>): void =>
  teachStore.setState((s) => ({ pretension: { ...s.pretension, ...part } }))

/** Curves of a line; the tensioner starts where the plan has it. */
export async function askSetup(plan: Plan, line: string): Promise<void> {
  const mine = ++asked
  waiting = null
  set({ status: 'running', why: null, setup: null, now: null })
  try {
    const setup = await remote().setup(plan, line)
    if (mine !== asked) return
    if (!setup) {
      set({ status: 'failed', why: 'the line is not in the plan' })
      return
    }
    set({ status: 'done', setup, now: setup.plannedState })
    teachStore.setState((s) => ({ values: { ...s.values, pretension: setup.planned } }))
  } catch (error) {
    if (mine === asked) set({ status: 'failed', why: error instanceof Error ? error.message : String(error) })
  }
}

/** The state at a pretension, as soon as the one before is there. */
export function askState(wish: Wish): void {
  waiting = wish
  if (!busy) void work()
}

async function work(): Promise<void> {
  busy = true
  const mine = asked
  try {
    while (waiting) {
      const { plan, line, pretension, absorber } = waiting
      waiting = null
      const now = await remote().at(plan, line, pretension, absorber)
      if (mine === asked && now) set({ now })
    }
  } catch (error) {
    set({ status: 'failed', why: error instanceof Error ? error.message : String(error) })
  } finally {
    busy = false
  }
}
