/** What plays a fall: scrubber with its moments, play and pause, speed, loop, scale of the rope's movement, export. */
import { ActionIcon, Button, Tooltip } from '@mantine/core'
import { Pause, Play, Repeat, SkipBack } from 'lucide-react'
import { type JSX, useEffect, useRef } from 'react'
import { type Dropped, fallStore, playhead, SPEEDS, useFall } from '../../state/fall/fall-store'
import { now, pause, playOrPause, seek } from '../../state/fall/player'
import { shownMoments, timelineOf } from '../../state/fall/timeline'
import { FilmButtons } from './FilmButtons'
import css from './fall.module.css'
import { Scrubber } from './Scrubber'

export function Transport({ dropped }: { dropped: Dropped }): JSX.Element | null {
  const line = timelineOf(dropped.study)
  if (!line) return null
  return (
    <div className={css.transport}>
      <Scrubber dropped={dropped} line={line} />
      <PlayButtons dropped={dropped} from={line.from} to={line.to} />
      <Clock />
      <SpeedChoice />
      <Exaggeration />
      <span className={css.spread} />
      <FilmButtons dropped={dropped} />
    </div>
  )
}

function PlayButtons({ dropped, from, to }: { dropped: Dropped; from: number; to: number }): JSX.Element {
  const playing = useFall((s) => s.playing)
  const loop = useFall((s) => s.loop)
  const body = useFall((s) => s.active)
  const moments = shownMoments(dropped.study, to).filter((m) => m.what === 'lowest')
  const lowest = moments.find((m) => m.worker === body) ?? moments[0]
  const jump = (at: number) => (): void => {
    pause()
    seek(at)
  }
  return (
    <>
      <Tooltip label="To the start">
        <ActionIcon aria-label="To the start" onClick={jump(from)}>
          <SkipBack size={16} aria-hidden />
        </ActionIcon>
      </Tooltip>
      <ActionIcon variant="filled" aria-label={playing ? 'Pause' : 'Play'} onClick={playOrPause}>
        {playing ? <Pause size={16} aria-hidden /> : <Play size={16} aria-hidden />}
      </ActionIcon>
      <Tooltip label="Again and again">
        <ActionIcon
          aria-label="Again and again"
          aria-pressed={loop}
          variant={loop ? 'filled' : 'default'}
          onClick={() => fallStore.setState({ loop: !loop })}
        >
          <Repeat size={16} aria-hidden />
        </ActionIcon>
      </Tooltip>
      <Button size="xs" variant="default" disabled={!lowest} onClick={jump(lowest?.at ?? 0)}>
        To the lowest point
      </Button>
    </>
  )
}

function Clock(): JSX.Element {
  const text = useRef<HTMLSpanElement>(null)
  useEffect(() => {
    const show = (): void => {
      if (text.current) text.current.textContent = `${now().toFixed(3)} s`
    }
    show()
    return playhead.subscribe(show)
  }, [])
  return <span ref={text} className={css.time} data-testid="fall-time" />
}

function SpeedChoice(): JSX.Element {
  const speed = useFall((s) => s.speed)
  return (
    <select
      className={css.select}
      aria-label="Speed"
      value={speed}
      onChange={(e) => fallStore.setState({ speed: Number(e.currentTarget.value) })}
    >
      {SPEEDS.map((s) => (
        <option key={s.value} value={s.value}>
          {s.label}
        </option>
      ))}
    </select>
  )
}

const scales = [
  { value: 1, label: 'rope to scale' },
  { value: 2, label: 'rope moves 2 times' },
  { value: 4, label: 'rope moves 4 times' },
]

function Exaggeration(): JSX.Element {
  const exaggerate = useFall((s) => s.exaggerate)
  return (
    <select
      className={css.select}
      aria-label="Scale of the rope's movement"
      value={exaggerate}
      onChange={(e) => fallStore.setState({ exaggerate: Number(e.currentTarget.value) })}
    >
      {scales.map((s) => (
        <option key={s.value} value={s.value}>
          {s.label}
        </option>
      ))}
    </select>
  )
}
