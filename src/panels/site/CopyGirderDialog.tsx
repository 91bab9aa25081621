/** Copies a girder so many times at a spacing, to its left or right. */
import { Button } from '@mantine/core'
import { type JSX, useState } from 'react'
import { edit } from '../../state/edit'
import { copyGirder } from '../../state/edits/girder-edits'
import { app, useApp } from '../../state/store'
import { ChoiceField } from '../fields/ChoiceField'
import { QuantityField } from '../fields/QuantityField'
import { closeDialog, DialogFrame } from '../shell/DialogFrame'
import css from './site.module.css'

const sides = [
  { value: '1', label: 'to its left' },
  { value: '-1', label: 'to its right' },
]

export default function CopyGirderDialog(): JSX.Element | null {
  const id = useApp((s) => (s.dialog?.kind === 'copy-girder' ? s.dialog.girder : null))
  const girder = useApp((s) => s.plan.girders.find((g) => g.id === id))
  const [times, setTimes] = useState(2)
  const [spacing, setSpacing] = useState(2.4384)
  const [side, setSide] = useState('1')
  if (!girder) return null
  const copy = (): void => {
    let made: string[] = []
    edit(`copy ${girder.name} ${times} times`, (plan) => {
      made = copyGirder(plan, girder.id, times, spacing * Number(side))
    })
    app.setState({ selection: made.map((g) => ({ kind: 'girder', id: g })) })
    closeDialog()
  }
  return (
    <DialogFrame title={`Copy ${girder.name}`} size="sm">
      <form
        className={css.form}
        onSubmit={(e) => {
          e.preventDefault()
          copy()
        }}
      >
        <QuantityField
          label="Copies"
          unit="count"
          value={times}
          least={1}
          most={50}
          onTake={(v) => void setTimes(v)}
        />
        <QuantityField
          label="Spacing"
          unit="m"
          value={spacing}
          least={0.1}
          most={50}
          onTake={(v) => void setSpacing(v)}
        />
        <ChoiceField label="Side" value={side} choices={sides} onTake={setSide} />
        <Button type="submit" variant="filled">
          Copy
        </Button>
      </form>
    </DialogFrame>
  )
}
