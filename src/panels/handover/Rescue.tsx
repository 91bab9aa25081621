/** Rescue of a hanging worker, line by line: where they hang, over what, and how they are reached in what time. */
import { Button, NumberInput, Textarea, TextInput } from '@mantine/core'
import { type JSX, useState } from 'react'
import { hangingOf, SUSPENSION_CAUTION } from '../../handover/package/rescue'
import { rescuePlanGaps, rescuePlanOf } from '../../plan/records/log'
import type { Line } from '../../plan/types'
import { formatQuantity } from '../../plan/units'
import { addRecord } from '../../state/records'
import { useApp } from '../../state/store'
import css from './handover.module.css'
import { RecordForm } from './RecordForm'

export function Rescue(): JSX.Element {
  const lines = useApp((s) => s.plan.lines)
  return (
    <>
      <p className={css.quiet}>{SUSPENSION_CAUTION}</p>
      {lines.map((l) => (
        <LineRescue key={l.id} line={l} />
      ))}
    </>
  )
}

function LineRescue({ line }: { line: Line }): JSX.Element {
  const plan = useApp((s) => s.plan)
  const [open, setOpen] = useState(false)
  const record = rescuePlanOf(plan, line.id)
  const gaps = rescuePlanGaps(record)
  return (
    <>
      <h3>{line.name || line.id}</h3>
      <Hanging line={line} />
      {record ? (
        <p className={css.quiet}>
          {record.method}; {record.gear}; {record.people} people, {record.minutes} minutes. {record.by},{' '}
          {record.at.slice(0, 10)}
        </p>
      ) : null}
      {gaps.length > 0 ? <p className={css.state}>Still wanted: {gaps.join('; ')}.</p> : null}
      {open ? (
        <RescueForm line={line} close={() => setOpen(false)} />
      ) : (
        <Button onClick={() => setOpen(true)}>
          {record ? 'Record a new rescue plan' : 'Record the rescue plan'}
        </Button>
      )}
    </>
  )
}

/** From the study: how far below the edge the deepest fall leaves a worker. */
function Hanging({ line }: { line: Line }): JSX.Element {
  const { study, units } = useApp()
  const detail = study.details.find((d) => d.id === line.id)
  const plan = study.ofPlan
  const hanging = study.results && detail && plan ? hangingOf(plan, study.results, line, detail) : null
  if (!hanging) return <p>Where a worker would hang is not known yet.</p>
  const length = (m: number): string => formatQuantity(m, 'm', units)
  const over = hanging.over.length > 0 ? hanging.over.join(', ') : 'nothing that the plan names'
  return (
    <p>
      {hanging.worker} at station {length(hanging.station)}: D-ring {length(hanging.dRing)}, feet{' '}
      {length(hanging.feet)} below the edge, over {over}.
    </p>
  )
}

/** Who reaches a hanging worker, from where, with what, in what time; kept only when somebody has signed. */
export function RescueForm({ line, close }: { line: Line; close: () => void }): JSX.Element {
  const [method, setMethod] = useState('')
  const [gear, setGear] = useState('')
  const [people, setPeople] = useState<number | ''>('')
  const [minutes, setMinutes] = useState<number | ''>('')
  const draft = { method: method.trim(), gear: gear.trim(), people: Number(people), minutes: Number(minutes) }
  const gaps = rescuePlanGaps({ ...draft, kind: 'rescue-plan', line: line.id, id: '', at: '', by: '' })
  const whole = (v: string | number): number | '' => (v === '' ? '' : Number(v))
  return (
    <RecordForm
      who="Planned by"
      label="Record the rescue plan"
      lacks={gaps.length > 0 ? gaps.join('; ') : null}
      close={close}
      keep={(signed) => addRecord({ kind: 'rescue-plan', line: line.id, ...draft, ...signed })}
    >
      <Textarea
        size="xs"
        label="How a hanging worker is reached, from where"
        autosize
        minRows={2}
        maxLength={2000}
        data-autofocus
        value={method}
        onChange={(e) => setMethod(e.currentTarget.value)}
      />
      <TextInput
        label="Gear, and where it is kept"
        value={gear}
        maxLength={500}
        onChange={(e) => setGear(e.currentTarget.value)}
      />
      <NumberInput
        size="xs"
        label="People"
        min={1}
        max={99}
        allowDecimal={false}
        value={people}
        onChange={(v) => setPeople(whole(v))}
      />
      <NumberInput
        size="xs"
        label="Minutes until the worker is down or up"
        min={1}
        max={999}
        value={minutes}
        onChange={(v) => setMinutes(whole(v))}
      />
    </RecordForm>
  )
}
