/** The open plan against another one, or another state of it: what moved, which findings changed. */
import { Button } from '@mantine/core'
import { type JSX, useEffect, useState } from 'react'
import { getDesk } from '../../desk/desk'
import { changedLines } from '../../handover/compare/lines'
import { readPlan } from '../../plan/read'
import type { Plan } from '../../plan/types'
import { tell } from '../../state/ask'
import { beside, endBeside, showBeside } from '../../state/compare/beside'
import { modelsForStudy } from '../../state/models/model-store'
import { app, useApp } from '../../state/store'
import { Differences, type Found } from './Differences'
import css from './handover.module.css'
import { making, useMaking } from './making'

export function Compare(): JSX.Element {
  const plan = useApp((s) => s.plan)
  const busy = useMaking((s) => s.at !== null)
  // Opening another plan ends it.
  const shown = beside((s) => s.other?.plan)
  const [found, setFound] = useState<Found | null>(null)
  const choose = async (): Promise<void> => {
    const other = await pickPlan()
    if (!other) return
    const of = app.getState().plan
    const compared = await making('studying both plans', (api, told) =>
      api.compare(other.plan, of, modelsForStudy(), told),
    )
    if (!compared) return
    const { before, details, comparison } = compared
    showBeside({ ...before, details, lines: changedLines(before.plan, of, comparison) })
    setFound({ of, name: other.name, compared })
  }
  useEffect(() => endBeside, [])
  return (
    <>
      <p className={css.quiet}>
        Choose an earlier state of this plan, or another plan. The open plan is the later one.
      </p>
      <Button disabled={busy} onClick={() => void choose()}>
        Choose a plan to compare with
      </Button>
      {found && shown === found.compared.before.plan ? (
        <Differences found={found} stale={found.of !== plan} />
      ) : null}
    </>
  )
}

async function pickPlan(): Promise<{ plan: Plan; name: string } | null> {
  const picked = await getDesk().pickFile('any')
  if (!picked.ok) {
    if (picked.code !== 'cancelled') tell(picked.why, 'fails')
    return null
  }
  const read = readPlan(new TextDecoder().decode(picked.value.bytes))
  if (read.ok) return { plan: read.plan, name: picked.value.name }
  const [first] = read.faults
  tell(
    `${picked.value.name} is no plan: ${first ? `${first.path}: ${first.message}` : 'it could not be read'}`,
    'fails',
  )
  return null
}
