/** What is known about the plan's study: the last whole one, and whether it is of the plan as it stands. */
import type { Skin } from '../geometry/room/skin/skin'
import type { Plan } from '../plan/types'
import type { LineDetail } from '../study/details'
import type { Results } from '../study/results'

export interface StudyState {
  /** 'running' while a newer plan is computed; the results shown meanwhile are of `ofPlan`. */
  status: 'none' | 'running' | 'done' | 'failed' | 'cancelled'
  /** 0 to 1, of the run that is under way. */
  progress: number
  /** What it is at, such as a line's name. */
  doing: string
  /** In plain words, where the last run failed. */
  error: string | null
  /** Something a person should know about the run, such as that the worker had to be started again. */
  notice: string | null
  results: Results | null
  /** Shapes for pictures, by line. */
  details: LineDetail[]
  /** The rooms as surfaces for the picture; they may come a little after the figures. */
  skins: Skin[]
  /** The plan that the results are of. */
  ofPlan: Plan | null
  /** False while the falls in time are still to come. */
  whole: boolean
}

export const noStudy: StudyState = {
  status: 'none',
  progress: 0,
  doing: '',
  error: null,
  notice: null,
  results: null,
  details: [],
  skins: [],
  ofPlan: null,
  whole: false,
}
