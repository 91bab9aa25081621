/** The drawing of the tape with the pointer on it: grab, pan, zoom; focusable handles in order along the line. */
import { type JSX, useEffect, useMemo, useRef, useState } from 'react'
import { SvgPicture } from '../../drawings/SvgPicture'
import { tape } from '../../drawings/tape'
import type { Line } from '../../plan/types'
import { refKey } from '../../state/refs'
import { useApp } from '../../state/store'
import { useTapePointer } from './pointer'
import { TapeHandles } from './TapeHandles'
import { TapeLabel } from './TapeLabel'
import css from './tape.module.css'
import { useMeshBounds } from './use-mesh-bounds'
import type { TapeZoom } from './zoom'

export function TapeField(props: { line: Line; width: number; height: number; zoom: TapeZoom }): JSX.Element {
  const { line, width, height, zoom } = props
  const picture = useTape(line, width, height, zoom)
  const box = useRef<HTMLDivElement>(null)
  const [held, setHeld] = useState<string | null>(null)
  const pointer = useTapePointer(picture.view, zoom, setHeld)
  useWheel(box, (e, x) => {
    const station = picture.view.left + x / picture.view.scaleX
    if (e.shiftKey || Math.abs(e.deltaX) > Math.abs(e.deltaY))
      zoom.pan(((e.deltaX || e.deltaY) / picture.view.scaleX) * 0.5)
    else zoom.by(e.deltaY > 0 ? 1.15 : 1 / 1.15, station)
  })
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the handles inside are buttons; this is the ground to pan on
    <div
      ref={box}
      className={css.field}
      style={{ position: 'absolute', inset: 0 }}
      onPointerDown={pointer.down}
      onPointerMove={pointer.move}
      onPointerUp={pointer.up}
      onPointerCancel={pointer.cancel}
      onPointerLeave={pointer.leave}
      onDoubleClick={zoom.all}
    >
      <SvgPicture picture={picture.picture} />
      <TapeHandles line={line} view={picture.view} />
      <TapeLabel line={line} view={picture.view} held={held} />
    </div>
  )
}

/** The picture, drawn again when the plan, its results, the selection or the window change. */
function useTape(line: Line, width: number, height: number, zoom: TapeZoom): ReturnType<typeof tape> {
  const plan = useApp((s) => s.plan)
  const units = useApp((s) => s.units)
  const results = useApp((s) => s.study.results)
  const rope = useApp((s) => s.study.details.find((d) => d.id === line.id) ?? null)
  const selection = useApp((s) => s.selection)
  const meshes = useMeshBounds()
  const { low, high } = zoom.stations
  return useMemo(() => {
    const selected = new Set(selection.map(refKey))
    return tape(
      { plan, line, results, rope, units, selected, meshes },
      { width, height, stations: { low, high } },
    )
  }, [plan, line, results, rope, units, selection, meshes, width, height, low, high])
}

/** React listens to wheels passively; zooming has to keep the page from scrolling. */
function useWheel(
  box: React.RefObject<HTMLDivElement | null>,
  turn: (e: WheelEvent, x: number) => void,
): void {
  const latest = useRef(turn)
  latest.current = turn
  useEffect(() => {
    const element = box.current
    if (!element) return
    const onWheel = (e: WheelEvent): void => {
      e.preventDefault()
      latest.current(e, e.clientX - element.getBoundingClientRect().left)
    }
    element.addEventListener('wheel', onWheel, { passive: false })
    return () => element.removeEventListener('wheel', onWheel)
  }, [box])
}
