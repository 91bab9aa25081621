/** The girder unrolled along the bottom of the window: the same things as in the scene, all of them to grab. */
import { ActionIcon, Tooltip } from '@mantine/core'
import { useElementSize } from '@mantine/hooks'
import { Maximize2, ZoomIn, ZoomOut } from 'lucide-react'
import type { JSX } from 'react'
import type { Line } from '../../plan/types'
import { app, useApp } from '../../state/store'
import { cautionText } from '../words/Caution'
import { TapeField } from './TapeField'
import css from './tape.module.css'
import { type TapeZoom, useTapeZoom } from './zoom'

export function TapePanel(): JSX.Element {
  const line = useApp((s) => s.plan.lines.find((l) => l.id === s.tapeLine) ?? s.plan.lines[0])
  return <div className={css.panel}>{line ? <LineTape key={line.id} line={line} /> : <EmptyTape />}</div>
}

function EmptyTape(): JSX.Element {
  return (
    <>
      <div className={css.head}>
        <h2>Tape</h2>
      </div>
      <p className={css.empty}>
        A line shows here unrolled, with its loops counted. There is none yet: press R and click twice along a
        girder.
      </p>
    </>
  )
}

function LineTape({ line }: { line: Line }): JSX.Element {
  const { ref, width, height } = useElementSize<HTMLDivElement>()
  const zoom = useTapeZoom(line)
  return (
    <>
      <div className={css.head}>
        <h2>Tape</h2>
        <LineChoice id={line.id} />
        <GirderWords line={line} />
        <ZoomButtons zoom={zoom} />
        <span className={css.caution}>{cautionText}</span>
      </div>
      <div ref={ref} className={css.field} data-testid="tape">
        {width > 0 && height > 0 ? <TapeField line={line} width={width} height={height} zoom={zoom} /> : null}
      </div>
    </>
  )
}

function LineChoice({ id }: { id: string }): JSX.Element {
  const lines = useApp((s) => s.plan.lines)
  return (
    <select
      className={css.line}
      aria-label="Line on the tape"
      value={id}
      onChange={(e) =>
        app.setState({
          tapeLine: e.currentTarget.value,
          selection: [{ kind: 'line', id: e.currentTarget.value }],
        })
      }
    >
      {lines.map((l) => (
        <option key={l.id} value={l.id}>
          {l.name || l.id}
        </option>
      ))}
    </select>
  )
}

function GirderWords({ line }: { line: Line }): JSX.Element {
  const name = useApp((s) => s.plan.girders.find((g) => g.id === line.girder)?.name)
  return <span className={css.quiet}>on {name ?? line.girder}, from its start</span>
}

function ZoomButtons({ zoom }: { zoom: TapeZoom }): JSX.Element {
  return (
    <span style={{ display: 'inline-flex' }}>
      <Tooltip label="Closer (or turn the wheel)">
        <ActionIcon size="sm" aria-label="Closer on the tape" onClick={() => zoom.by(0.7)}>
          <ZoomIn size={14} />
        </ActionIcon>
      </Tooltip>
      <Tooltip label="Farther">
        <ActionIcon size="sm" aria-label="Farther on the tape" onClick={() => zoom.by(1 / 0.7)}>
          <ZoomOut size={14} />
        </ActionIcon>
      </Tooltip>
      <Tooltip label="The whole line (or double-click)">
        <ActionIcon size="sm" aria-label="The whole line on the tape" onClick={zoom.all}>
          <Maximize2 size={13} />
        </ActionIcon>
      </Tooltip>
    </span>
  )
}
