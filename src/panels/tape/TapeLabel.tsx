/** What is selected or dragged says where it stands; unless it is being dragged, pressing that types it. */
import type { JSX } from 'react'
import { toPicture, type View } from '../../drawings/view'
import type { Line, Plan } from '../../plan/types'
import { formatLength, type UnitSystem } from '../../plan/units'
import { loopsBeside } from '../../state/edits/stanchion-edits'
import { refKey, sameRef } from '../../state/refs'
import { useApp } from '../../state/store'
import { canType, typeBeside } from '../../state/typed/typing'
import { type TapeHandle, tapeHandles } from './TapeHandles'
import css from './tape.module.css'

export function TapeLabel({
  line,
  view,
  held,
}: {
  line: Line
  view: View
  held: string | null
}): JSX.Element | null {
  const plan = useApp((s) => s.plan)
  const units = useApp((s) => s.units)
  const one = useApp((s) => (s.selection.length === 1 ? s.selection[0] : undefined))
  const dragged = useApp((s) => s.gesture !== null)
  const opens = useApp((s) => s.gesture === null && canType(s, one))
  const handle = one && tapeHandles(plan, line).find((h) => sameRef(h.ref, one))
  if (!handle || !(dragged || opens)) return null
  const [x, y] = toPicture(view, [handle.station, 0])
  const style = {
    left: Math.min(view.width - 110, Math.max(110, x)),
    top: Math.min(y + 26, view.height - 24),
  }
  const words = wordsOf(plan, handle, units)
  if (opens)
    return (
      <button
        type="button"
        className={css.label}
        style={style}
        data-opens={refKey(handle.ref)}
        title="Type it (Enter)"
        onPointerDown={(e) => e.stopPropagation()}
        onClick={(e) => {
          const { left, top } = e.currentTarget.getBoundingClientRect()
          typeBeside(handle.ref, { x: left, y: top })
        }}
      >
        {words}
      </button>
    )
  return (
    <span className={css.label} style={style}>
      {words}
      {held ? `, ${held}` : ''}
    </span>
  )
}

function wordsOf(plan: Plan, { ref, station, name }: TapeHandle, units: UnitSystem): string {
  if (ref.kind !== 'stanchion') return name
  const loops = loopsBeside(plan, ref.id)
  const where = loops ? `, loops ${loops.before}-${loops.after}` : ''
  return `${ref.id} ${formatLength(station, units)}${where}`
}
