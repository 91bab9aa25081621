import { TextInput } from '@mantine/core'
import { type JSX, useState } from 'react'
import type { Line, ServiceRecord } from '../../plan/types'
import { addRecord } from '../../state/records'
import { RecordForm } from './RecordForm'

const labels: Record<ServiceRecord['kind'], string> = {
  'out-of-service': 'Take it out of service',
  'in-service': 'Put it back in service',
  retired: 'Retire it',
}

/** Out of service, back in service, or retired for good: always with the reason. */
export function ServiceForm(props: {
  line: Line
  kind: ServiceRecord['kind']
  close: () => void
}): JSX.Element {
  const [reason, setReason] = useState('')
  return (
    <RecordForm
      who="Competent person"
      label={labels[props.kind]}
      lacks={reason.trim() === '' ? 'the reason' : null}
      close={props.close}
      keep={(signed) =>
        addRecord({ kind: props.kind, line: props.line.id, reason: reason.trim(), ...signed })
      }
    >
      <TextInput
        label="Reason"
        value={reason}
        maxLength={500}
        onChange={(e) => setReason(e.currentTarget.value)}
      />
    </RecordForm>
  )
}
