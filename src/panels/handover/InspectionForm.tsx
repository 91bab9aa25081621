/** The inspection list: every item passed, failed or not applicable, with the names of photo files. */
import { Button, SegmentedControl } from '@mantine/core'
import { type JSX, useMemo, useState } from 'react'
import { getDesk } from '../../desk/desk'
import { inspectionItems } from '../../handover/records/inspection-items'
import { wordsOf } from '../../handover/words'
import type { InspectionRecord, Line } from '../../plan/types'
import { tell } from '../../state/ask'
import { addRecord } from '../../state/records'
import css from './handover.module.css'
import { RecordForm } from './RecordForm'

type Result = InspectionRecord['items'][number]['result']

const choices: { value: Result; label: string }[] = [
  { value: 'pass', label: 'passed' },
  { value: 'fail', label: 'failed' },
  { value: 'n/a', label: 'not applicable' },
]

export function InspectionForm({ line, close }: { line: Line; close: () => void }): JSX.Element {
  const items = useMemo(() => inspectionItems(line, wordsOf('en')), [line])
  const [results, setResults] = useState<Record<string, Result>>({})
  const [photos, setPhotos] = useState<string[]>([])
  const open = items.filter((i) => results[i.id] === undefined).length
  const record = items.map((i) => ({ id: i.id, result: results[i.id] ?? ('n/a' as const) }))
  return (
    <RecordForm
      who="Competent person"
      label="Record the inspection"
      lacks={open > 0 ? `a result for ${open} ${open === 1 ? 'item' : 'items'}` : null}
      close={close}
      keep={(signed) =>
        addRecord({
          kind: 'inspection',
          line: line.id,
          items: record,
          ...(photos.length > 0 ? { photos } : {}),
          ...signed,
        })
      }
    >
      {items.map((i) => (
        <div key={i.id} className={css.item}>
          <span>{i.text}</span>
          <SegmentedControl
            size="xs"
            orientation="vertical"
            aria-label={i.text}
            // Nothing is chosen until somebody has looked.
            value={results[i.id] ?? ''}
            data={choices}
            onChange={(v) => setResults({ ...results, [i.id]: v as Result })}
          />
        </div>
      ))}
      <Photos photos={photos} add={(name) => setPhotos([...photos, name])} />
    </RecordForm>
  )
}

/** Photos stay where they are; the record names them. */
function Photos({ photos, add }: { photos: string[]; add: (name: string) => void }): JSX.Element {
  const pick = async (): Promise<void> => {
    const picked = await getDesk().pickFile('photo')
    if (picked.ok) add(picked.value.name)
    else if (picked.code !== 'cancelled') tell(picked.why, 'fails')
  }
  return (
    <div className={css.row}>
      <span className={css.quiet}>{photos.length > 0 ? photos.join(', ') : 'No photo is named.'}</span>
      <Button onClick={() => void pick()}>Name a photo</Button>
    </div>
  )
}
