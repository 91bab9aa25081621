/** Four plots against time; their cursor is the scrubber's. The cursor is moved past React, at the playhead's own beat. */
import { ActionIcon } from '@mantine/core'
import { useElementSize } from '@mantine/hooks'
import { Maximize2 } from 'lucide-react'
import { type JSX, type PointerEvent, useEffect, useMemo, useRef, useState } from 'react'
import type { FallPlotKind } from '../../drawings/fall-plots'
import { plot } from '../../drawings/plot'
import { SvgPicture } from '../../drawings/SvgPicture'
import { screenTheme } from '../../drawings/theme'
import { type Dropped, playhead, useFall } from '../../state/fall/fall-store'
import { now, pause, seek } from '../../state/fall/player'
import { useApp } from '../../state/store'
import css from './fall.module.css'
import { PlotDialog } from './PlotDialog'
import { plotKinds, plotOf, readAt } from './plot-input'

export function Plots({ dropped }: { dropped: Dropped }): JSX.Element {
  const [large, setLarge] = useState<FallPlotKind | null>(null)
  return (
    <div className={css.plots}>
      {plotKinds.map(({ kind, name }) => (
        <div key={kind} className={css.plot} data-plot={kind}>
          <div className={css.plotHead}>
            <b>{name}</b>
            <Reading kind={kind} dropped={dropped} />
            <ActionIcon size="sm" aria-label={`${name}: larger, and export`} onClick={() => setLarge(kind)}>
              <Maximize2 size={13} aria-hidden />
            </ActionIcon>
          </div>
          <PlotField kind={kind} dropped={dropped} textSize={11} />
        </div>
      ))}
      {large ? <PlotDialog kind={large} dropped={dropped} close={() => setLarge(null)} /> : null}
    </div>
  )
}

/** The figure at the cursor. */
export function Reading({ kind, dropped }: { kind: FallPlotKind; dropped: Dropped }): JSX.Element {
  const text = useRef<HTMLSpanElement>(null)
  const units = useApp((s) => s.units)
  const body = useFall((s) => s.active)
  useEffect(() => {
    const show = (): void => {
      if (text.current) text.current.textContent = readAt(kind, dropped, playhead.get(), body, units)
    }
    show()
    return playhead.subscribe(show)
  }, [kind, dropped, body, units])
  return <span ref={text} data-reading={kind} />
}

export function PlotField(props: { kind: FallPlotKind; dropped: Dropped; textSize: number }): JSX.Element {
  const { kind, dropped, textSize } = props
  const { ref, width, height } = useElementSize<HTMLDivElement>()
  const units = useApp((s) => s.units)
  const drawn = useMemo(() => {
    if (width < 40 || height < 40) return null
    return plot(plotOf(kind, dropped, units), width, height, {
      ...screenTheme,
      textSize,
      stroke: textSize / 8,
    })
  }, [kind, dropped, units, width, height, textSize])
  const seekAt = (e: PointerEvent<HTMLDivElement>): void => {
    if (!drawn || e.buttons !== 1) return
    pause()
    seek(drawn.at([e.clientX - e.currentTarget.getBoundingClientRect().left, 0])[0])
  }
  return (
    <div
      ref={ref}
      className={css.field}
      style={textSize > 12 ? { height: '100%' } : {}}
      onPointerDown={(e) => {
        e.currentTarget.setPointerCapture(e.pointerId)
        seekAt(e)
      }}
      onPointerMove={seekAt}
    >
      {drawn ? <SvgPicture picture={drawn.picture} /> : null}
      {drawn ? <Cursor at={drawn.at} /> : null}
    </div>
  )
}

function Cursor({ at }: { at: (point: [number, number]) => readonly [number, number] }): JSX.Element {
  const bar = useRef<HTMLDivElement>(null)
  useEffect(() => {
    const from = at([0, 0])[0]
    const perPixel = at([1, 0])[0] - from
    const show = (): void => {
      if (bar.current) bar.current.style.transform = `translateX(${(now() - from) / perPixel}px)`
    }
    show()
    return playhead.subscribe(show)
  }, [at])
  return <div ref={bar} className={css.cursor} />
}
