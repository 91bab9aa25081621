/** Approval by the qualified person: for exactly this state of the plan, and stale as soon as anything that counts changes. */
import { Button, Checkbox } from '@mantine/core'
import { type JSX, useState } from 'react'
import { planHash } from '../../plan/hash'
import { approvalState } from '../../plan/records/log'
import { statusCounts } from '../../state/derived'
import { addRecord } from '../../state/records'
import { useApp } from '../../state/store'
import { statusWord } from '../words/status'
import css from './handover.module.css'
import { RecordForm } from './RecordForm'

export function ApprovalForm(): JSX.Element {
  const plan = useApp((s) => s.plan)
  const [open, setOpen] = useState(false)
  const state = approvalState(plan, planHash(plan))
  const who = state.record ? `${state.record.by}, ${state.record.at.slice(0, 10)}` : ''
  const text = {
    none: 'No approval is recorded.',
    current: `Approval recorded by ${who}, for exactly this plan.`,
    stale: `Stale: the approval by ${who} was for another state of the plan.`,
  }[state.status]
  return (
    <>
      <p
        className={css.state}
        data-kind={state.status === 'stale' ? 'fails' : undefined}
        data-testid="approval"
      >
        {text}
      </p>
      {open ? (
        <Form close={() => setOpen(false)} />
      ) : (
        <Button onClick={() => setOpen(true)}>Record an approval</Button>
      )}
    </>
  )
}

function Form({ close }: { close: () => void }): JSX.Element {
  const plan = useApp((s) => s.plan)
  const study = useApp((s) => s.study)
  const [read, setRead] = useState(false)
  const whole = study.status === 'done' && study.whole && study.ofPlan === plan
  const counts = statusCounts(study.results)
  const hash = planHash(plan)
  const lacks = !whole
    ? 'a study of this plan that has come to its end'
    : read
      ? null
      : 'the word that the calculation package was read'
  return (
    <RecordForm
      who="Qualified person"
      label="Record the approval"
      lacks={lacks}
      close={close}
      keep={(signed) => addRecord({ kind: 'approval', planHash: hash, ...signed })}
    >
      <p className={css.quiet}>
        Plan {hash.slice(0, 12)}: {counts.fail} {statusWord.fail}, {counts.warn} {statusWord.warn},{' '}
        {counts.unknown} {statusWord.unknown}.
      </p>
      <Checkbox
        size="xs"
        label="I am the qualified person and have read the calculation package of this plan"
        checked={read}
        onChange={(e) => setRead(e.currentTarget.checked)}
      />
    </RecordForm>
  )
}
