/** What a lesson shows in one state: figures, a sentence, a plot, a picture with a thing to grab. All of it computed. */

import type { LessonId } from '../../study/teach'
import type { TriangleForce } from '../force-triangle'
import type { PlotInput } from '../plot'
import type { SvgElement } from '../svg'
import type { Theme } from '../theme'
import type { Point } from '../view'

export interface LessonFigure {
  name: string
  /** SI; null: not known. */
  value: number | null
  unit: string
}

export interface LessonPicture {
  picture: SvgElement
  /** Where the thing to grab is, and what the value would be with it at another point. */
  grip: Point
  valueAt(point: Point): number
}

export interface Grabbed {
  label: string
  value: number
  least: number
  most: number
  /** One press of an arrow key. */
  step: number
  /** As it reads. */
  text: string
}

export interface Lesson {
  id: LessonId
  title: string
  sentence: string
  /** How the state stands against a limit, or null where there is none. */
  status: { word: 'holds' | 'look here' | 'fails' | 'not known'; text: string } | null
  figures: LessonFigure[]
  /** Why, in a few words with the equation. */
  why: string
  plot: PlotInput
  /** A second one for what has another unit. */
  beside: PlotInput | null
  triangle: { forces: TriangleForce[]; longest: number } | null
  grabbed: Grabbed
  draw(width: number, height: number, theme: Theme): LessonPicture
}
