/** The daily check: what the indicator shows, and whether everything on the list was as it should be. */
import { SegmentedControl } from '@mantine/core'
import { type JSX, useState } from 'react'
import type { Line } from '../../plan/types'
import { addRecord } from '../../state/records'
import css from './handover.module.css'
import { MeasuredField } from './MeasuredField'
import { RecordForm } from './RecordForm'

export function DailyForm({ line, close }: { line: Line; close: () => void }): JSX.Element {
  const [tension, setTension] = useState<number | null>(null)
  const [passed, setPassed] = useState<'passed' | 'failed' | ''>('')
  return (
    <RecordForm
      who="Competent person"
      label="Record the daily check"
      lacks={passed === '' ? 'whether it passed' : null}
      close={close}
      keep={(signed) =>
        addRecord({ kind: 'daily', line: line.id, tension, passed: passed === 'passed', ...signed })
      }
    >
      <MeasuredField label="Tension on the indicator" unit="N" value={tension} take={setTension} />
      <p className={css.quiet}>The list “Before each use” of the crew sheet says what to look at.</p>
      <SegmentedControl
        size="xs"
        aria-label="Result of the daily check"
        value={passed}
        data={[
          { value: 'passed', label: 'Everything passed' },
          { value: 'failed', label: 'Something did not' },
        ]}
        onChange={(v) => setPassed(v as 'passed' | 'failed')}
      />
    </RecordForm>
  )
}
