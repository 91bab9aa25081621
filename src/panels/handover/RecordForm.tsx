/** The frame of every record: its own fields, then who writes it and a note. Kept only when somebody has signed. */
import { Button, Textarea, TextInput } from '@mantine/core'
import { type FormEvent, type JSX, type ReactNode, useState } from 'react'
import css from './handover.module.css'

export interface Signed {
  by: string
  note?: string
}

export function RecordForm(props: {
  children?: ReactNode
  /** What the person is, such as "Competent person". */
  who: string
  /** What the button does, such as "Record the inspection". */
  label: string
  /** Why it can't be kept yet; null: it can. */
  lacks: string | null
  keep: (signed: Signed) => void
  close: () => void
}): JSX.Element {
  const [by, setBy] = useState('')
  const [note, setNote] = useState('')
  const lacks = props.lacks ?? (by.trim() === '' ? 'a name' : null)
  const submit = (e: FormEvent): void => {
    e.preventDefault()
    if (lacks) return
    const text = note.trim()
    props.keep({ by: by.trim(), ...(text ? { note: text } : {}) })
    props.close()
  }
  return (
    <form className={css.form} onSubmit={submit}>
      {props.children}
      <TextInput
        label={`${props.who}, name`}
        value={by}
        maxLength={200}
        onChange={(e) => setBy(e.currentTarget.value)}
      />
      <Textarea
        size="xs"
        label="Note"
        autosize
        minRows={1}
        value={note}
        maxLength={2000}
        onChange={(e) => setNote(e.currentTarget.value)}
      />
      {lacks ? <p className={css.quiet}>Still wanted: {lacks}.</p> : null}
      <div className={css.row}>
        <Button type="submit" variant="filled" disabled={lacks !== null}>
          {props.label}
        </Button>
        <Button onClick={props.close}>Drop it</Button>
      </div>
      <p className={css.quiet}>A record is never changed or taken out; a later one follows it.</p>
    </form>
  )
}
