/** The plot whose cursor follows the hand, and beside it the force triangle or a second plot. */
import { useElementSize } from '@mantine/hooks'
import { type JSX, useMemo } from 'react'
import { forceTriangle } from '../../drawings/force-triangle'
import { type PlotInput, plot } from '../../drawings/plot'
import { SvgPicture } from '../../drawings/SvgPicture'
import type { SvgElement } from '../../drawings/svg'
import type { Lesson } from '../../drawings/teach/lesson'
import { screenTheme, type Theme } from '../../drawings/theme'
import { useTeach } from '../../state/teach/teach-store'
import css from './teach.module.css'

export function LessonPlots({ lesson, textSize }: { lesson: Lesson; textSize: number }): JSX.Element {
  const hidden = useTeach((s) => s.quiz !== null && !s.quiz.revealed)
  const theme = useMemo(() => ({ ...screenTheme, textSize, stroke: textSize / 8 }), [textSize])
  if (hidden) return <div className={`${css.side} ${css.hidden}`}>Say first what you expect.</div>
  const { triangle } = lesson
  return (
    <div className={css.side}>
      <Drawn
        testId="lesson-plot"
        draw={(w, h) => plot(lesson.plot, w, h, theme).picture}
        on={[lesson, theme]}
      />
      {triangle ? (
        <Drawn
          testId="force-triangle"
          draw={(w, h) => forceTriangle(triangle.forces, w, h, theme, triangle.longest)}
          on={[lesson, theme]}
        />
      ) : null}
      {lesson.beside && !triangle ? <Second input={lesson.beside} theme={theme} /> : null}
    </div>
  )
}

export const Second = ({ input, theme }: { input: PlotInput; theme: Theme }): JSX.Element => (
  <Drawn testId="second-plot" draw={(w, h) => plot(input, w, h, theme).picture} on={[input, theme]} />
)

function Drawn(props: {
  testId: string
  draw: (width: number, height: number) => SvgElement
  on: unknown[]
}): JSX.Element {
  const { ref, width, height } = useElementSize<HTMLDivElement>()
  const { draw, on } = props
  // biome-ignore lint/correctness/useExhaustiveDependencies: `on` is what the drawing is made from
  const picture = useMemo(
    () => (width > 40 && height > 40 ? draw(width, height) : null),
    [...on, width, height],
  )
  return (
    <div ref={ref} className={css.plot} data-testid={props.testId}>
      {picture ? <SvgPicture picture={picture} /> : null}
    </div>
  )
}
