/** Handles over the drawing: stanchions, then the feet of their tie-backs, in the order of the line, for pointer and Tab. */
import type { JSX } from 'react'
import { toPicture, type View } from '../../drawings/view'
import { findLoop } from '../../geometry/loops'
import type { Line, Plan } from '../../plan/types'
import { formatLength } from '../../plan/units'
import { hover, select } from '../../state/actions'
import { hasRef, type Ref, refKey, sameRef } from '../../state/refs'
import { useApp } from '../../state/store'
import css from './tape.module.css'

export interface TapeHandle {
  ref: Ref
  station: number
  /** Above the girder's top, m. */
  height: number
  name: string
}

export function tapeHandles(plan: Plan, line: Line): TapeHandle[] {
  const girder = plan.girders.find((g) => g.id === line.girder)
  return line.stanchions.flatMap((s) => {
    const part = plan.parts.find((p) => p.id === s.part)
    const height = part?.kind === 'stanchion' ? part.height : 0
    const post: TapeHandle = {
      ref: { kind: 'stanchion', id: s.id },
      station: s.station,
      height,
      name: `Stanchion ${s.id}`,
    }
    const feet = line.tieBacks
      .filter((t) => t.stanchion === s.id)
      .flatMap((t) =>
        (['strap', 'tensioner'] as const).flatMap((foot): TapeHandle[] => {
          const loop = girder && findLoop(girder, foot === 'strap' ? t.strapLoop : t.tensionerLoop)
          const name = `Tie-back ${t.id}, ${foot} leg on loop ${(loop?.index ?? 0) + 1}`
          return loop
            ? [{ ref: { kind: 'tie-back', id: t.id, foot }, station: loop.station, height: 0, name }]
            : []
        }),
      )
    return [post, ...feet].sort((a, b) => a.station - b.station)
  })
}

export function TapeHandles({ line, view }: { line: Line; view: View }): JSX.Element {
  const plan = useApp((s) => s.plan)
  return (
    <>
      {tapeHandles(plan, line).map((handle) => (
        <HandleButton key={refKey(handle.ref)} handle={handle} view={view} />
      ))}
    </>
  )
}

function HandleButton({ handle, view }: { handle: TapeHandle; view: View }): JSX.Element | null {
  const units = useApp((s) => s.units)
  const hovered = useApp((s) => sameRef(s.hover, handle.ref))
  const selected = useApp((s) => hasRef(s.selection, handle.ref))
  const [x, y] = toPicture(view, [handle.station, handle.height])
  if (x < -10 || x > view.width + 10) return null
  const ref = refKey(handle.ref)
  return (
    <button
      type="button"
      className={css.handle}
      style={{ left: x, top: y }}
      data-ref={ref}
      data-x={x}
      data-handle={ref}
      data-hover={hovered}
      aria-pressed={selected}
      aria-label={`${handle.name}, ${formatLength(handle.station, units)}`}
      onFocus={(e) => {
        if (e.currentTarget.matches(':focus-visible')) select(handle.ref)
      }}
      onMouseEnter={() => hover(handle.ref)}
    />
  )
}
