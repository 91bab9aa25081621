/** Beside the lesson: whose figures it uses, all of them, why, and what else can be turned. */
import type { JSX } from 'react'
import { LANYARDS } from '../../drawings/teach/lanyard'
import type { Lesson } from '../../drawings/teach/lesson'
import { screenTheme } from '../../drawings/theme'
import { formatLength, formatQuantity } from '../../plan/units'
import { useApp } from '../../state/store'
import { setAbsorber, setLanyard, teachFrom } from '../../state/teach/teach-actions'
import { useTeach } from '../../state/teach/teach-store'
import { ChoiceField } from '../fields/ChoiceField'
import { Caution } from '../words/Caution'
import { Second } from './LessonPlots'
import { useLesson } from './lesson-of'
import css from './teach.module.css'

export default function TeachPanel(): JSX.Element {
  const lesson = useLesson()
  return (
    <div className={css.panel}>
      <div className={css.scroll}>
        <h2>{lesson?.title ?? 'Teach'}</h2>
        <Source />
        {lesson ? <Figures lesson={lesson} /> : null}
        {lesson ? (
          <>
            <h3>Why</h3>
            <p>{lesson.why}</p>
          </>
        ) : null}
      </div>
      <Caution />
    </div>
  )
}

const sources = [
  { value: 'plan', label: 'my plan’s line' },
  { value: 'example', label: 'a built-in example' },
]

function Source(): JSX.Element {
  const source = useTeach((s) => s.source)
  const from = useTeach((s) => s.figures.from)
  const lesson = useTeach((s) => s.lesson)
  const lines = useApp((s) => s.plan.lines.length)
  return (
    <>
      <ChoiceField
        label="Figures of"
        value={source}
        choices={lines > 0 ? sources : sources.slice(1)}
        onTake={(v) => void teachFrom(v === 'plan' ? 'plan' : 'example')}
      />
      <p className={css.quiet}>
        {lesson === 'pretension' && source === 'example' ? 'the sample’s first line' : from}
      </p>
    </>
  )
}

function Figures({ lesson }: { lesson: Lesson }): JSX.Element {
  const units = useApp((s) => s.units)
  const hidden = useTeach((s) => s.quiz !== null && !s.quiz.revealed)
  return (
    <>
      <dl className={css.figures} data-testid="lesson-figures">
        {lesson.figures.map((f) => (
          <Figure key={f.name} name={f.name} text={formatQuantity(f.value, f.unit, units)} value={f.value} />
        ))}
      </dl>
      {lesson.id === 'lanyard' ? <LanyardLength still={hidden} /> : null}
      {lesson.id === 'pretension' ? <AbsorberChoice still={hidden} /> : null}
      {lesson.triangle && lesson.beside && !hidden ? (
        <div style={{ height: 170, display: 'grid', marginTop: 12 }}>
          <Second input={lesson.beside} theme={screenTheme} />
        </div>
      ) : null}
    </>
  )
}

const Figure = ({ name, text, value }: { name: string; text: string; value: number | null }): JSX.Element => (
  <>
    <dt>{name}</dt>
    <dd data-figure={name} data-value={value ?? undefined}>
      {text}
    </dd>
  </>
)

function LanyardLength({ still }: { still: boolean }): JSX.Element {
  const length = useTeach((s) => s.lanyardLength)
  const units = useApp((s) => s.units)
  return (
    <>
      <h3>Length of the lanyard</h3>
      <input
        type="range"
        className={css.range}
        aria-label="Length of the lanyard"
        aria-valuetext={formatLength(length, units)}
        min={LANYARDS.least}
        max={LANYARDS.most}
        step={0.05}
        value={length}
        disabled={still}
        onChange={(e) => setLanyard(Number(e.currentTarget.value))}
      />
    </>
  )
}

function AbsorberChoice({ still }: { still: boolean }): JSX.Element | null {
  const has = useTeach((s) => s.pretension.setup?.hasAbsorber ?? false)
  const absorber = useTeach((s) => s.absorber)
  if (!has) return <p className={css.quiet}>This line has no absorber.</p>
  return (
    <p>
      <label>
        <input
          type="checkbox"
          checked={absorber}
          disabled={still}
          onChange={(e) => setAbsorber(e.currentTarget.checked)}
        />{' '}
        with the line’s absorber
      </label>
    </p>
  )
}
