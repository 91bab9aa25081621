/** What a quiz says. */
import type { Quiz } from '../../state/teach/teach-store'
import type { LessonId } from '../../study/teach'

export const thingUnits: Record<LessonId, string> = {
  'tie-back': 'deg',
  sag: 'deg',
  pretension: 'N',
  lanyard: 'm',
}

export const quizWords: Record<LessonId, (target: string) => string> = {
  'tie-back': (target) => `The foot goes to ${target} from the vertical. What does one leg pull?`,
  sag: (target) => `The rope sags ${target} instead. What is the tension?`,
  pretension: (target) => `The tensioner is set to ${target}. What is the greatest tension in a fall?`,
  lanyard: (target) => `The hook goes to ${target} over the feet. How deep is the whole fall?`,
}

export const ways = [
  { value: 'more', label: 'More' },
  { value: 'same', label: 'About the same' },
  { value: 'less', label: 'Less' },
] as const

/** Within this part of it a figure counts as about the same. */
const ALIKE = 0.05

type Way = 'more' | 'less' | 'same'

const wayTo = (was: number, is: number): Way =>
  Math.abs(is - was) <= ALIKE * Math.abs(was) ? 'same' : is > was ? 'more' : 'less'

const told: Record<Way, string> = {
  more: 'more than before',
  less: 'less than before',
  same: 'about the same as before',
}

export const wayOf = (was: number | null, is: number | null): string =>
  was === null || is === null ? 'not known' : told[wayTo(was, is)]

/** How near the guess was, in plain words. */
export function answerWords({ guess, figure }: Quiz, is: number | null): string {
  if (is === null || figure === null) return ''
  const way =
    guess.way === null
      ? []
      : [guess.way === wayTo(figure, is) ? 'The way was right.' : 'It goes the other way than you said.']
  const off =
    guess.value === null ? [] : [`Your number was ${Math.round(Math.abs(guess.value / is - 1) * 100)} % off.`]
  return [...way, ...off].join(' ')
}
