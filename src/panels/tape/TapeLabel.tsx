/** What is selected or dragged says where it stands, at its head. */
import type { JSX } from 'react'
import { toPicture, type View } from '../../drawings/view'
import type { Line } from '../../plan/types'
import { formatLength } from '../../plan/units'
import { loopsBeside } from '../../state/edits/stanchion-edits'
import { sameRef } from '../../state/refs'
import { useApp } from '../../state/store'
import { tapeHandles } from './TapeHandles'
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
  const one = useApp((s) => (s.gesture !== null && s.selection.length === 1 ? s.selection[0] : undefined))
  const handle = one && tapeHandles(plan, line).find((h) => sameRef(h.ref, one))
  if (!handle) return null
  const [x, y] = toPicture(view, [handle.station, 0])
  const loops = handle.ref.kind === 'stanchion' ? loopsBeside(plan, handle.ref.id) : null
  const where = loops ? `, loops ${loops.before}-${loops.after}` : ''
  const words =
    handle.ref.kind === 'stanchion'
      ? `${handle.ref.id} ${formatLength(handle.station, units)}${where}`
      : handle.name
  return (
    <span
      className={css.label}
      style={{ left: Math.min(view.width - 110, Math.max(110, x)), top: Math.min(y + 26, view.height - 24) }}
    >
      {words}
      {held ? `, ${held}` : ''}
    </span>
  )
}
