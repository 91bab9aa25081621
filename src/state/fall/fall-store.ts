/** What is dropped, what came of it and how it is played. Not part of the plan, so not of its history either. */
import { create } from 'zustand'
import type { Plan } from '../../plan/types'
import type { Corner } from '../../solver/model'
import type { Drop, DropRequest, DropStudy, FallSeries } from '../../study/drop'
import { createPlayhead } from './playhead'

export interface Dropped {
  study: DropStudy
  series: FallSeries
  /** The plan it was computed for; the picture is stale once the window holds another. */
  plan: Plan
}

export interface FallState {
  line: string | null
  drops: Drop[]
  /** Whose place the next click chooses. */
  active: number
  order: DropRequest['order']
  corner: Corner
  status: 'none' | 'running' | 'done' | 'failed' | 'cancelled'
  progress: number
  /** In plain words, where it failed. */
  why: string | null
  dropped: Dropped | null
  playing: boolean
  /** Of real time. */
  speed: number
  loop: boolean
  /** Of the rope's movement in the picture; 1 is to scale. */
  exaggerate: number
}

export const SPEEDS = [
  { value: 1, label: 'real time' },
  { value: 0.25, label: '1/4 speed' },
  { value: 0.1, label: '1/10 speed' },
] as const

export const fallStore = create<FallState>()(() => ({
  line: null,
  drops: [],
  active: 0,
  order: 'together',
  corner: { line: 'soft', connector: 'low', grip: 'sliding' },
  status: 'none',
  progress: 0,
  why: null,
  dropped: null,
  playing: false,
  speed: 0.25,
  loop: false,
  exaggerate: 1,
}))

export const useFall = fallStore

/** Frame of the shown fall. */
export const playhead = createPlayhead()
