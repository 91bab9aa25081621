/** The open lesson as it stands: from what the trainer has moved to what the drawings say of it. */
import { lanyardLesson } from '../../drawings/teach/lanyard'
import type { Lesson, LessonFigure } from '../../drawings/teach/lesson'
import { pretensionLesson } from '../../drawings/teach/pretension'
import { sagLesson } from '../../drawings/teach/sag'
import { tieBackLesson } from '../../drawings/teach/tie-back'
import { once } from '../../state/derived'
import { useApp } from '../../state/store'
import { type TeachState, useTeach } from '../../state/teach/teach-store'
import type { UnitSystem } from '../../state/window-state'
import type { LessonId } from '../../study/teach'

export const lessonNames: Record<LessonId, string> = {
  'tie-back': 'Tie-back',
  sag: 'Sag',
  pretension: 'Pretension',
  lanyard: 'Lanyard',
}

/** The figure that a quiz asks for. */
const askedFigures: Record<LessonId, string> = {
  'tie-back': 'Pull in one leg',
  sag: 'Tension in the rope',
  pretension: 'Greatest tension in a fall',
  lanyard: 'Total fall',
}

export const askedFigure = (lesson: Lesson): LessonFigure | undefined =>
  lesson.figures.find((f) => f.name === askedFigures[lesson.id])

/** Null while the pretension's falls are still being computed. */
const lessonIn = once((s: TeachState, units: UnitSystem): Lesson | null => {
  const { figures, values } = s
  switch (s.lesson) {
    case 'tie-back':
      return tieBackLesson(figures.tieBack, values['tie-back'], units)
    case 'sag':
      return sagLesson(figures.sag, values.sag, units)
    case 'pretension': {
      const { setup, now } = s.pretension
      // The thing follows the hand at once; its figures a moment later, and they say for which pretension they are.
      return setup && now
        ? pretensionLesson(setup, { now, absorber: s.absorber && setup.hasAbsorber }, units)
        : null
    }
    case 'lanyard':
      return lanyardLesson({ ...figures.lanyard, length: s.lanyardLength }, values.lanyard, units)
  }
})

export function useLesson(): Lesson | null {
  const units = useApp((s) => s.units)
  const state = useTeach()
  return lessonIn(state, units)
}
