/** What the computation is at, how it ended, and whether it is still of the plan as it stands. */
import { Button } from '@mantine/core'
import type { JSX } from 'react'
import { cancelFall, compute } from '../../state/fall/drop-actions'
import { useFall } from '../../state/fall/fall-store'
import { useApp } from '../../state/store'
import css from './fall.module.css'

export function RunState(): JSX.Element | null {
  const status = useFall((s) => s.status)
  const why = useFall((s) => s.why)
  const ends = useFall((s) => s.dropped?.study.ends ?? null)
  const ofPlan = useFall((s) => s.dropped?.plan ?? null)
  const plan = useApp((s) => s.plan)
  if (status === 'running') return <Running />
  if (status === 'failed') return <Fails text={`This fall could not be computed: ${why}.`} />
  if (status === 'cancelled') return <p className={css.quiet}>Stopped before it was computed.</p>
  if (ofPlan && ofPlan !== plan) return <Stale />
  return ends ? <Fails text={`The picture ends here: ${ends.why}. What comes after is not known.`} /> : null
}

function Running(): JSX.Element {
  const progress = useFall((s) => s.progress)
  return (
    <div className={css.state} role="status">
      <p>Computing the fall in time</p>
      <span className={css.bar}>
        <i style={{ width: `${Math.round(progress * 100)}%` }} />
      </span>
      <Button size="compact-xs" variant="default" onClick={cancelFall}>
        Cancel
      </Button>
    </div>
  )
}

const Fails = ({ text }: { text: string }): JSX.Element => (
  <div className={css.state} data-kind="fails" role="alert" data-testid="fall-ends">
    <p>{text}</p>
  </div>
)

const Stale = (): JSX.Element => (
  <div className={css.state} role="status">
    <p>The plan has changed since this fall was computed.</p>
    <Button size="compact-xs" variant="default" onClick={() => void compute()}>
      Drop again
    </Button>
  </div>
)
