/** Another plan that scene and panel show beside the open one; not part of the plan, nor of its history. */
import { create } from 'zustand'
import type { Plan } from '../../plan/types'
import type { LineDetail } from '../../study/details'
import type { Results } from '../../study/results'

export type BesideShown = 'before' | 'after' | 'both'

export interface OtherPlan {
  /** The earlier plan; the open one is the later. */
  plan: Plan
  results: Results
  details: LineDetail[]
  /** Ids of the lines that differ, also of those that only one of the two plans has. */
  lines: readonly string[]
}

interface Beside {
  other: OtherPlan | null
  show: BesideShown
}

export const beside = create<Beside>()(() => ({ other: null, show: 'both' }))

export const showBeside = (other: OtherPlan): void => beside.setState({ other, show: 'both' })

export const endBeside = (): void => beside.setState({ other: null })
