/** One part to type: name, every figure, and the source with its date, without which it is not taken. */
import { Button, NativeSelect, TextInput } from '@mantine/core'
import { type FormEvent, type JSX, useState } from 'react'
import { partSchema } from '../../plan/schema/parts'
import type { Part } from '../../plan/types'
import { changePart, keepOwnParts } from '../../state/parts/own-parts'
import { figureOf, partFigures, partKindWord, withFigure } from '../../state/parts/part-fields'
import { app, useApp } from '../../state/store'
import { QuantityField } from '../fields/QuantityField'
import { DialogFrame } from '../shell/DialogFrame'
import css from './parts.module.css'

export default function PartDialog(): JSX.Element | null {
  const dialog = useApp((s) => (s.dialog?.kind === 'part' ? s.dialog : null))
  return dialog ? <PartForm start={dialog.part} own={dialog.own} /> : null
}

const back = (): void => app.setState({ dialog: { kind: 'parts' } })

/** Sources end in their date, as "catalogue sheet 12, 2026-04-01". */
const dated = /^(.*), (\d{4}-\d{2}-\d{2})$/

function PartForm({ start, own }: { start: Part; own: boolean }): JSX.Element {
  const [part, setPart] = useState(start)
  const was = dated.exec(start.source)
  const [source, setSource] = useState(was?.[1] ?? start.source)
  const [date, setDate] = useState(was?.[2] ?? '')
  const [why, setWhy] = useState<string | null>(null)
  const submit = (e: FormEvent): void => {
    e.preventDefault()
    const refused = whyNot(part, source, date)
    setWhy(refused)
    if (refused) return
    const whole = { ...part, name: part.name.trim(), source: `${source.trim()}, ${date}` } as Part
    if (own) keepOwnParts([whole])
    if (!own || app.getState().plan.parts.some((p) => p.id === whole.id)) changePart(whole)
    back()
  }
  return (
    <DialogFrame title={`${partKindWord[part.kind]}: ${own ? 'your own part' : 'in this plan'}`} size="md">
      <form className={css.form} onSubmit={submit}>
        <TextInput
          data-autofocus
          label="Name"
          value={part.name}
          onChange={(e) => setPart({ ...part, name: e.currentTarget.value })}
        />
        {part.kind === 'wire-rope' ? (
          <TextInput
            label="Construction"
            value={part.construction}
            onChange={(e) => setPart({ ...part, construction: e.currentTarget.value })}
          />
        ) : null}
        {part.kind === 'connector' ? (
          <TypeChoice value={part.type} onTake={(type) => setPart({ ...part, type })} />
        ) : null}
        <div>
          {partFigures[part.kind].map(({ key, label, unit }) => {
            const value = figureOf(part, key)
            return value === undefined ? null : (
              <QuantityField
                key={key}
                label={label}
                unit={unit}
                value={value}
                least={0}
                onTake={(v) => void setPart(withFigure(part, key, v))}
              />
            )
          })}
        </div>
        <TextInput
          label="Source of the figures"
          description="Document and page, as somebody else would find it"
          value={source}
          onChange={(e) => setSource(e.currentTarget.value)}
        />
        <TextInput
          label="Date of the source"
          type="date"
          value={date}
          onChange={(e) => setDate(e.currentTarget.value)}
        />
        {why ? (
          <p className={css.why} role="alert">
            {why}
          </p>
        ) : null}
        <div className={css.actions}>
          <Button type="submit" variant="filled">
            Keep the part
          </Button>
          <Button onClick={back}>Back</Button>
        </div>
      </form>
    </DialogFrame>
  )
}

const types = [
  { value: 'lanyard', label: 'Lanyard' },
  { value: 'retractable', label: 'Retractable' },
]

function TypeChoice(props: {
  value: 'lanyard' | 'retractable'
  onTake: (type: 'lanyard' | 'retractable') => void
}): JSX.Element {
  return (
    <NativeSelect
      label="Type"
      value={props.value}
      data={types}
      onChange={(e) => props.onTake(e.currentTarget.value === 'retractable' ? 'retractable' : 'lanyard')}
    />
  )
}

function whyNot(part: Part, source: string, date: string): string | null {
  if (part.name.trim() === '') return 'The part needs a name.'
  if (source.trim() === '') return 'The part needs the source of its figures.'
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) return 'The source needs its date.'
  const read = partSchema.safeParse({ ...part, source })
  const issue = read.success ? undefined : read.error.issues[0]
  return issue ? `${issue.path.join(' ')}: ${issue.message}.` : null
}
