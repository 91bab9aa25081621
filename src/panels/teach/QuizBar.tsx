/** Predict, then let go: a way and a number, and afterwards how near they were. */
import { Button } from '@mantine/core'
import type { JSX } from 'react'
import type { Lesson } from '../../drawings/teach/lesson'
import { formatQuantity, parseQuantity } from '../../plan/units'
import { useApp } from '../../state/store'
import { ask, guess, letGo, quizTargets } from '../../state/teach/teach-actions'
import type { Quiz } from '../../state/teach/teach-store'
import { TypedField } from '../fields/TypedField'
import { askedFigure } from './lesson-of'
import { answerWords, quizWords, thingUnits, wayOf, ways } from './quiz-words'
import css from './teach.module.css'

export function QuizBar({ lesson, quiz }: { lesson: Lesson; quiz: Quiz }): JSX.Element {
  const units = useApp((s) => s.units)
  const figure = askedFigure(lesson)
  const target = formatQuantity(quizTargets[lesson.id][quiz.asked]!, thingUnits[lesson.id], units)
  const was = formatQuantity(quiz.figure, figure?.unit ?? '', units)
  return (
    <div className={css.quiz} data-testid="quiz">
      <p>
        {quizWords[lesson.id](target)} {figure?.name}: {was} now.
      </p>
      {quiz.revealed ? (
        <Answer lesson={lesson} quiz={quiz} />
      ) : (
        <Guess unit={figure?.unit ?? ''} quiz={quiz} />
      )}
    </div>
  )
}

function Guess({ unit, quiz }: { unit: string; quiz: Quiz }): JSX.Element {
  const units = useApp((s) => s.units)
  const take = (typed: string): string | null => {
    const read = parseQuantity(typed, unit, units)
    if (!read.ok) return read.why
    guess({ value: read.value })
    return null
  }
  const { way, value } = quiz.guess
  return (
    <>
      <span className={css.ways} role="radiogroup" aria-label="It will be">
        {ways.map((w) => (
          <Button
            key={w.value}
            size="xs"
            role="radio"
            aria-checked={way === w.value}
            variant={way === w.value ? 'filled' : 'default'}
            onClick={() => guess({ way: w.value })}
          >
            {w.label}
          </Button>
        ))}
      </span>
      <span style={{ width: 220 }}>
        <TypedField
          label="How much"
          shown={value === null ? '' : formatQuantity(value, unit, units)}
          take={take}
        />
      </span>
      <Button size="xs" variant="filled" disabled={way === null && value === null} onClick={letGo}>
        Let go
      </Button>
    </>
  )
}

function Answer({ lesson, quiz }: { lesson: Lesson; quiz: Quiz }): JSX.Element {
  const units = useApp((s) => s.units)
  const figure = askedFigure(lesson)
  const target = quizTargets[lesson.id][quiz.asked]!
  // Figures that take a moment are those of the asked state only once it is there.
  const there = Math.abs(lesson.grabbed.value - target) < 1e-6
  const value = there ? (figure?.value ?? null) : null
  return (
    <>
      <span data-testid="answer">
        {there
          ? `It is ${formatQuantity(value, figure?.unit ?? '', units)}: ${wayOf(quiz.figure, value)}. ${answerWords(quiz, value)}`
          : 'Computing'}
      </span>
      <Button size="xs" variant="default" disabled={!there} onClick={() => ask(value)}>
        Next question
      </Button>
    </>
  )
}
