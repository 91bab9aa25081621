/** The pretension lesson's falls in a thread of their own: two curves take up to a second. */
import * as Comlink from 'comlink'
import type { Plan } from '../../plan/types'
import { type PretensionSetup, type PretensionState, pretensionAt, pretensionSetup } from '../../study/teach'

const lineIn = (plan: Plan, id: string) => plan.lines.find((l) => l.id === id)

const worker = {
  setup: (plan: Plan, id: string): PretensionSetup | null => {
    const line = lineIn(plan, id)
    return line ? pretensionSetup(plan, line) : null
  },
  at: (plan: Plan, id: string, pretension: number, withAbsorber: boolean): PretensionState | null => {
    const line = lineIn(plan, id)
    return line ? pretensionAt(plan, line, pretension, withAbsorber) : null
  },
}

export type PretensionWorker = typeof worker

Comlink.expose(worker)
