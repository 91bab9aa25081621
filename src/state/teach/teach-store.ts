/** Which lesson is open and how its things stand. Not part of the plan. */
import { create } from 'zustand'
import {
  exampleFigures,
  type LessonId,
  type PretensionSetup,
  type PretensionState,
  type TeachFigures,
} from '../../study/teach'

export type { LessonId }

/** A question: the thing is to move from one value to another; what will come of it? */
export interface Quiz {
  /** Which of the lesson's targets is asked for. */
  asked: number
  from: number
  /** What is asked for, as it was before, SI. */
  figure: number | null
  guess: { way: 'more' | 'less' | 'same' | null; value: number | null }
  revealed: boolean
}

export interface TeachState {
  lesson: LessonId
  source: 'plan' | 'example'
  figures: TeachFigures
  /** What is grabbed in each lesson: degrees, degrees, N, m. */
  values: Record<LessonId, number>
  /** The lanyard's length, m. */
  lanyardLength: number
  /** With the line's absorber. */
  absorber: boolean
  pretension: {
    status: 'none' | 'running' | 'done' | 'failed'
    why: string | null
    setup: PretensionSetup | null
    now: PretensionState | null
  }
  quiz: Quiz | null
}

export const startValues = (figures: TeachFigures): Record<LessonId, number> => ({
  'tie-back': Math.min(70, Math.max(15, figures.tieBack.angle)),
  sag: 10,
  pretension: 4450,
  lanyard: figures.lanyard.hook,
})

export const teachStore = create<TeachState>()(() => ({
  lesson: 'tie-back',
  source: 'example',
  figures: exampleFigures,
  values: startValues(exampleFigures),
  lanyardLength: exampleFigures.lanyard.length,
  absorber: true,
  pretension: { status: 'none', why: null, setup: null, now: null },
  quiz: null,
}))

export const useTeach = teachStore
