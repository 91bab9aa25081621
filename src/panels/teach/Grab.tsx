/** The lesson's picture with the thing to grab: by pointer, or by the arrow keys. */
import { useElementSize } from '@mantine/hooks'
import { type JSX, type KeyboardEvent, type PointerEvent, useMemo, useRef } from 'react'
import { SvgPicture } from '../../drawings/SvgPicture'
import type { Grabbed, Lesson, LessonPicture } from '../../drawings/teach/lesson'
import { screenTheme } from '../../drawings/theme'
import { moveThing } from '../../state/teach/teach-actions'
import { useTeach } from '../../state/teach/teach-store'
import css from './teach.module.css'

export function Grab({ lesson, textSize }: { lesson: Lesson; textSize: number }): JSX.Element {
  const { ref, width, height } = useElementSize<HTMLDivElement>()
  const asking = useTeach((s) => s.quiz !== null && !s.quiz.revealed)
  const drawn = useMemo(
    () =>
      width > 80 && height > 80
        ? lesson.draw(width, height, { ...screenTheme, textSize, stroke: textSize / 8 })
        : null,
    [lesson, width, height, textSize],
  )
  return (
    <div ref={ref} className={css.picture}>
      {drawn ? <SvgPicture picture={drawn.picture} /> : null}
      {drawn ? <Grip drawn={drawn} grabbed={lesson.grabbed} still={asking} /> : null}
    </div>
  )
}

const within = (g: Grabbed, value: number): number => Math.min(g.most, Math.max(g.least, value))

function Grip(props: { drawn: LessonPicture; grabbed: Grabbed; still: boolean }): JSX.Element {
  const { drawn, grabbed, still } = props
  const move = useGrip(drawn, grabbed)
  return (
    <button
      type="button"
      role="slider"
      className={css.grip}
      style={{ left: drawn.grip[0], top: drawn.grip[1] }}
      disabled={still}
      aria-label={grabbed.label}
      aria-valuemin={grabbed.least}
      aria-valuemax={grabbed.most}
      aria-valuenow={grabbed.value}
      aria-valuetext={grabbed.text}
      title={grabbed.text}
      data-testid="grip"
      {...move}
      onKeyDown={(e) => step(e, grabbed)}
    />
  )
}

/** The thing must not jump when it is taken hold of beside its middle. */
function useGrip(drawn: LessonPicture, grabbed: Grabbed) {
  const held = useRef<{ x: number; y: number } | null>(null)
  const at = (e: PointerEvent<HTMLElement>): [number, number] => {
    const box = e.currentTarget.parentElement!.getBoundingClientRect()
    return [e.clientX - box.left, e.clientY - box.top]
  }
  return {
    onPointerDown: (e: PointerEvent<HTMLElement>): void => {
      if (e.button !== 0) return
      const [x, y] = at(e)
      held.current = { x: x - drawn.grip[0], y: y - drawn.grip[1] }
      e.currentTarget.setPointerCapture(e.pointerId)
    },
    onPointerMove: (e: PointerEvent<HTMLElement>): void => {
      if (!held.current) return
      const [x, y] = at(e)
      moveThing(within(grabbed, drawn.valueAt([x - held.current.x, y - held.current.y])))
    },
    onPointerUp: (): void => {
      held.current = null
    },
    onPointerCancel: (): void => {
      held.current = null
    },
  }
}

/** Arrows: up and right for more; with Shift five steps; Home and End. */
function step(e: KeyboardEvent, g: Grabbed): void {
  const by = g.step * (e.shiftKey ? 5 : 1)
  const to: Record<string, number> = {
    ArrowUp: g.value + by,
    ArrowRight: g.value + by,
    ArrowDown: g.value - by,
    ArrowLeft: g.value - by,
    Home: g.least,
    End: g.most,
  }
  const value = to[e.key]
  if (value === undefined) return
  e.preventDefault()
  e.stopPropagation()
  moveThing(within(g, Math.round(value / g.step) * g.step))
}
