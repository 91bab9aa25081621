/** The rescue plan of one line in front of everything, so that a finding about it is mended where it is read. */
import type { JSX } from 'react'
import { useApp } from '../../state/store'
import { closeDialog, DialogFrame } from '../shell/DialogFrame'
import { RescueForm } from './Rescue'

export default function RescueDialog(): JSX.Element | null {
  const id = useApp((s) => (s.dialog?.kind === 'rescue' ? s.dialog.line : null))
  const line = useApp((s) => s.plan.lines.find((l) => l.id === id))
  if (!line) return null
  return (
    <DialogFrame title={`Rescue plan of ${line.name || line.id}`} size="sm">
      <RescueForm line={line} close={closeDialog} />
    </DialogFrame>
  )
}
