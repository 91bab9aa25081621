/** Time as a bar to drag, with the moments of the fall as marks on it. */
import { type JSX, useEffect, useRef } from 'react'
import { type Dropped, playhead } from '../../state/fall/fall-store'
import { now, pause, seek } from '../../state/fall/player'
import { shownMoments, type Timeline } from '../../state/fall/timeline'
import css from './fall.module.css'

/** Half of the thumb, px: the bar's ends lie as far inside. */
const THUMB = 8

export function Scrubber({ dropped, line }: { dropped: Dropped; line: Timeline }): JSX.Element {
  const bar = useRef<HTMLInputElement>(null)
  useEffect(() => {
    const show = (): void => {
      if (!bar.current) return
      bar.current.value = String(now())
      bar.current.setAttribute('aria-valuetext', `${now().toFixed(3)} s from taut`)
    }
    show()
    return playhead.subscribe(show)
  }, [])
  return (
    <div className={css.scrub}>
      <Marks dropped={dropped} line={line} />
      <input
        ref={bar}
        type="range"
        aria-label="Time of the fall"
        min={line.from}
        max={line.to}
        step={0.002}
        defaultValue={line.from}
        onInput={(e) => {
          pause()
          seek(Number(e.currentTarget.value))
        }}
      />
    </div>
  )
}

function Marks({ dropped, line }: { dropped: Dropped; line: Timeline }): JSX.Element {
  const { study } = dropped
  const several = study.workers.length > 1
  const moments = shownMoments(study, line.to).map((m) => ({
    at: m.at,
    what: m.what as string,
    text: several ? `${m.worker + 1}: ${m.text}` : m.text,
  }))
  const ends = study.ends && !moments.some((m) => m.what === 'strikes' && m.at >= line.to - 1e-9)
  const all = ends ? [...moments, { at: line.to, what: 'ends', text: 'the picture ends' }] : moments
  return (
    <>
      {all.map((m, i) => (
        <button
          key={`${m.what}${i}`}
          type="button"
          className={css.mark}
          data-what={m.what}
          data-row={i % 3}
          style={placed((m.at - line.from) / (line.to - line.from))}
          onClick={() => {
            pause()
            seek(m.at)
          }}
        >
          {m.text}
        </button>
      ))}
    </>
  )
}

/** Marks of the last fifth hang to the left of their moment, or they would leave the bar. */
const placed = (
  share: number,
): { left?: string; right?: string; borderLeft?: string; borderRight?: string } =>
  share > 0.85
    ? { right: `calc(${THUMB}px + ${1 - share} * (100% - ${2 * THUMB}px))` }
    : { left: `calc(${THUMB}px + ${share} * (100% - ${2 * THUMB}px))` }
