/**
 * The one store. The plan is the only thing in history (zundo); window and study state lie beside it. Views read it with
 * `useApp`, everything else with `app.getState()`. Nothing is computed here.
 */
import { type TemporalState, temporal } from 'zundo'
import { create } from 'zustand'
import { subscribeWithSelector } from 'zustand/middleware'
import type { Plan } from '../plan/types'
import { emptyPlan } from './empty-plan'
import { noStudy, type StudyState } from './study-state'
import { freshWindow, type WindowState } from './window-state'

/** What history remembers: the plan, and in words what made it so. */
export interface PlanHistory {
  plan: Plan
  edited: string
}

export interface AppState extends PlanHistory, WindowState {
  study: StudyState
}

export const app = create<AppState>()(
  temporal(
    subscribeWithSelector(
      (): AppState => ({ plan: emptyPlan(), edited: '', study: noStudy, ...freshWindow() }),
    ),
    {
      partialize: ({ plan, edited }): PlanHistory => ({ plan, edited }),
      equality: (a, b) => a.plan === b.plan,
      limit: 500,
    },
  ),
)

export const useApp = app

export const history = (): TemporalState<PlanHistory> => app.temporal.getState() as TemporalState<PlanHistory>

export const isDirty = (s: AppState): boolean => s.plan !== s.savedPlan
