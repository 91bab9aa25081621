/** What was decided about a finding, by whom and when; a note never changes the finding. */
import { Button, Textarea, TextInput } from '@mantine/core'
import { type FormEvent, type JSX, useState } from 'react'
import { isFinding } from '../../state/derived'
import { noteFinding } from '../../state/findings'
import { useApp } from '../../state/store'
import type { Finding } from '../../study/results'
import css from './findings.module.css'

export function Notes({ finding }: { finding: Finding }): JSX.Element {
  const records = useApp((s) => s.plan.records)
  const [writing, setWriting] = useState(false)
  const notes = (records ?? []).flatMap((r) =>
    r.kind === 'finding-note' && isFinding(finding, r) ? [r] : [],
  )
  return (
    <>
      {notes.map((note) => (
        <p key={note.id} className={css.note}>
          {note.text}
          <br />
          <span className={css.quiet}>
            {note.by}, {note.at.slice(0, 10)}
          </span>
        </p>
      ))}
      {writing ? (
        <NoteForm finding={finding} close={() => setWriting(false)} />
      ) : (
        <button type="button" className={css.link} onClick={() => setWriting(true)}>
          Note what was decided
        </button>
      )}
    </>
  )
}

function NoteForm({ finding, close }: { finding: Finding; close: () => void }): JSX.Element {
  const [text, setText] = useState('')
  const [by, setBy] = useState('')
  const ready = text.trim() !== '' && by.trim() !== ''
  const submit = (e: FormEvent): void => {
    e.preventDefault()
    if (!ready) return
    noteFinding({ rule: finding.rule, subject: finding.subject }, by.trim(), text.trim())
    close()
  }
  return (
    <form className={css.noteForm} onSubmit={submit}>
      <Textarea
        size="xs"
        label="What was decided and why"
        description="The finding stays as it is; the note stands beside it, on paper too."
        autosize
        minRows={2}
        data-autofocus
        value={text}
        onChange={(e) => setText(e.currentTarget.value)}
      />
      <TextInput label="By" value={by} onChange={(e) => setBy(e.currentTarget.value)} />
      <div style={{ display: 'flex', gap: 8 }}>
        <Button type="submit" variant="filled" disabled={!ready}>
          Keep the note
        </Button>
        <Button onClick={close}>Drop it</Button>
      </div>
    </form>
  )
}
