/** The log of each line: where it stands, what is recorded, and forms that add to it. */
import { Button } from '@mantine/core'
import { type JSX, useState } from 'react'
import { lineState } from '../../plan/records/line-state'
import { recordsOf } from '../../plan/records/log'
import type { Line, PlanRecord } from '../../plan/types'
import { formatQuantity } from '../../plan/units'
import { useApp } from '../../state/store'
import { ApprovalForm } from './ApprovalForm'
import { AsBuiltCheck, AsBuiltForm } from './AsBuilt'
import { DailyForm } from './DailyForm'
import css from './handover.module.css'
import { InspectionForm } from './InspectionForm'
import { LineChoice } from './LineChoice'
import { ServiceForm } from './ServiceForm'

type Form = 'as-built' | 'inspection' | 'daily' | 'out-of-service' | 'in-service' | 'retired'

const forms: { form: Form; label: string }[] = [
  { form: 'as-built', label: 'As built' },
  { form: 'inspection', label: 'Inspection' },
  { form: 'daily', label: 'Daily check' },
  { form: 'out-of-service', label: 'Take out of service' },
  { form: 'in-service', label: 'Put back in service' },
  { form: 'retired', label: 'Retire' },
]

export function Records(): JSX.Element | null {
  const plan = useApp((s) => s.plan)
  const tapeLine = useApp((s) => s.tapeLine)
  const [chosen, choose] = useState<string | null>(tapeLine)
  const [form, setForm] = useState<Form | null>(null)
  const line = plan.lines.find((l) => l.id === chosen) ?? plan.lines[0]
  if (!line) return null
  return (
    <>
      <h3>The whole plan</h3>
      <ApprovalForm />
      <h3>Line</h3>
      <LineChoice
        line={line.id}
        choose={(id) => {
          choose(id)
          setForm(null)
        }}
      />
      <Standing line={line} />
      <div style={{ display: 'flex', flexWrap: 'wrap', gap: 4 }}>
        {forms.map((f) => (
          <Button key={f.form} aria-pressed={form === f.form} onClick={() => setForm(f.form)}>
            {f.label}
          </Button>
        ))}
      </div>
      {form ? (
        <OpenForm key={`${line.id} ${form}`} form={form} line={line} close={() => setForm(null)} />
      ) : null}
      <AsBuiltCheck line={line} />
      <Log line={line} />
    </>
  )
}

function OpenForm({ form, line, close }: { form: Form; line: Line; close: () => void }): JSX.Element {
  switch (form) {
    case 'as-built':
      return <AsBuiltForm line={line} close={close} />
    case 'inspection':
      return <InspectionForm line={line} close={close} />
    case 'daily':
      return <DailyForm line={line} close={close} />
    default:
      return <ServiceForm line={line} kind={form} close={close} />
  }
}

const standing = {
  'not-inspected': 'Not inspected yet: not to be used',
  'in-service': 'In service',
  'out-of-service': 'Out of service',
  retired: 'Retired',
} as const

/** The moment is that of looking: what is overdue shows when the panel is drawn. */
function Standing({ line }: { line: Line }): JSX.Element {
  const state = useApp((s) => s.plan)
  const { service, reason, nextDailyDue, overdue } = lineState(state, line.id, new Date().toISOString())
  const due = nextDailyDue ? `next daily check due ${nextDailyDue.slice(0, 16).replace('T', ' ')} UTC` : null
  const bad = service === 'out-of-service' || service === 'retired' || overdue
  return (
    <p className={css.state} data-kind={bad ? 'fails' : undefined} data-testid="standing">
      {standing[service]}
      {reason ? `: ${reason}` : ''}
      {due ? `; ${due}${overdue ? ', which is past' : ''}` : ''}
    </p>
  )
}

function Log({ line }: { line: Line }): JSX.Element {
  const plan = useApp((s) => s.plan)
  const units = useApp((s) => s.units)
  const records = [...recordsOf(plan, line.id)].reverse()
  return (
    <>
      <h3>Log, newest first</h3>
      {records.length === 0 ? <p className={css.quiet}>Nothing is recorded of this line.</p> : null}
      <ul className={css.log} data-testid="log">
        {records.map((r) => (
          <li key={r.id}>
            {r.at.slice(0, 16).replace('T', ' ')}, {r.by}: {recordText(r, units)}
          </li>
        ))}
      </ul>
    </>
  )
}

function recordText(r: PlanRecord, units: 'us' | 'si'): string {
  const note = r.note ? `; ${r.note}` : ''
  switch (r.kind) {
    case 'rescue-plan':
      return `rescue plan: ${r.method}; ${r.gear}; ${r.people} people, ${r.minutes} minutes${note}`
    case 'as-built':
      return `as built, tension ${formatQuantity(r.tension, 'N', units)}${note}`
    case 'inspection': {
      const failed = r.items.filter((i) => i.result === 'fail').map((i) => i.id)
      const photos = r.photos?.length ? `; photos ${r.photos.join(', ')}` : ''
      return `inspection, ${failed.length > 0 ? `not passed: ${failed.join(', ')}` : 'nothing failed'}${photos}${note}`
    }
    case 'daily':
      return `daily check ${r.passed ? 'passed' : 'did not pass'}, tension ${formatQuantity(r.tension, 'N', units)}${note}`
    case 'out-of-service':
    case 'in-service':
    case 'retired':
      return `${standing[r.kind].toLowerCase()}: ${r.reason}${note}`
    case 'approval':
      return `approval${note}`
    case 'finding-note':
      return r.text
  }
}
