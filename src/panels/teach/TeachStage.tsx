/** The lesson itself, over the picture of the site or on the whole screen: what to grab, one plot, one sentence. */
import { Button } from '@mantine/core'
import { type JSX, type RefObject, useEffect, useRef } from 'react'
import type { Lesson } from '../../drawings/teach/lesson'
import { useApp } from '../../state/store'
import { ask, endQuiz, enterTeach, openLesson, resetLesson } from '../../state/teach/teach-actions'
import { useTeach } from '../../state/teach/teach-store'
import type { LessonId } from '../../study/teach'
import { cautionText } from '../words/Caution'
import { StatusMark } from '../words/StatusMark'
import { ExportPlot } from './ExportPlot'
import { Grab } from './Grab'
import { LessonPlots } from './LessonPlots'
import { askedFigure, lessonNames, useLesson } from './lesson-of'
import { QuizBar } from './QuizBar'
import css from './teach.module.css'
import { useBoardText } from './text-size'

export default function TeachStage(): JSX.Element {
  const stage = useRef<HTMLElement>(null)
  const lesson = useLesson()
  const board = useBoardText(stage)
  const studied = useApp((s) => s.study.ofPlan === s.plan)
  // biome-ignore lint/correctness/useExhaustiveDependencies: once more when the study knows the plan
  useEffect(() => void enterTeach(), [studied])
  return (
    <section ref={stage} className={css.stage} aria-label="Lesson" data-testid="lesson">
      <Head stage={stage} lesson={lesson} />
      {lesson ? (
        <>
          <div className={css.body}>
            <Grab lesson={lesson} textSize={board} />
            <LessonPlots lesson={lesson} textSize={board} />
          </div>
          <Foot lesson={lesson} textSize={board} />
        </>
      ) : (
        <NotYet />
      )}
    </section>
  )
}

function Head({
  stage,
  lesson,
}: {
  stage: RefObject<HTMLElement | null>
  lesson: Lesson | null
}): JSX.Element {
  const open = useTeach((s) => s.lesson)
  const asking = useTeach((s) => s.quiz !== null)
  const revealed = useTeach((s) => s.quiz?.revealed === true)
  return (
    <div className={css.head}>
      <div role="tablist" aria-label="Lessons">
        {(Object.keys(lessonNames) as LessonId[]).map((id) => (
          <button
            key={id}
            type="button"
            role="tab"
            className={css.tab}
            aria-selected={id === open}
            onClick={() => openLesson(id)}
          >
            {lessonNames[id]}
          </button>
        ))}
      </div>
      <span className={css.spread} />
      <Button
        size="xs"
        variant={asking ? 'filled' : 'default'}
        aria-pressed={asking}
        disabled={!lesson}
        onClick={() => (asking ? endQuiz() : ask((lesson && askedFigure(lesson)?.value) ?? null))}
      >
        Quiz
      </Button>
      <Button size="xs" variant="default" onClick={resetLesson}>
        Reset
      </Button>
      <ExportPlot lesson={lesson} hidden={asking && !revealed} />
      <Button size="xs" variant="default" onClick={() => void wholeScreen(stage.current)}>
        Whole screen
      </Button>
    </div>
  )
}

async function wholeScreen(stage: HTMLElement | null): Promise<void> {
  if (document.fullscreenElement) await document.exitFullscreen()
  else await stage?.requestFullscreen().catch(() => undefined)
}

function Foot({ lesson, textSize }: { lesson: Lesson; textSize: number }): JSX.Element {
  const quiz = useTeach((s) => s.quiz)
  const hidden = quiz !== null && !quiz.revealed
  return (
    <div className={css.foot}>
      {quiz ? <QuizBar lesson={lesson} quiz={quiz} /> : null}
      {hidden ? null : (
        <p className={css.sentence} style={{ fontSize: textSize * 1.15 }} data-testid="sentence">
          {lesson.sentence}
        </p>
      )}
      {lesson.status && !hidden ? (
        <p className={css.status} data-testid="lesson-status" data-word={lesson.status.word}>
          <StatusMark status={statusOf[lesson.status.word]} />
          <b>{lesson.status.word}</b> {lesson.status.text}
        </p>
      ) : null}
      <span className={css.caution}>{cautionText}</span>
    </div>
  )
}

const statusOf = { holds: 'pass', 'look here': 'warn', fails: 'fail', 'not known': 'unknown' } as const

function NotYet(): JSX.Element {
  const { status, why } = useTeach((s) => s.pretension)
  return (
    <div className={css.hidden} role="status">
      {status === 'failed'
        ? `The falls of this line could not be computed: ${why}.`
        : 'Computing the falls of this line'}
    </div>
  )
}
