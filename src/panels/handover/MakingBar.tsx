import { Button } from '@mantine/core'
import type { JSX } from 'react'
import css from './handover.module.css'
import { stopMaking, useMaking } from './making'

/** How far the work is, and the way to stop it. */
export function MakingBar(): JSX.Element | null {
  const at = useMaking((s) => s.at)
  if (!at) return null
  const percent = Math.round(at.share * 100)
  return (
    <div className={css.row} style={{ padding: '6px 16px' }} role="status">
      <span>
        {percent} %, {at.what}
      </span>
      <span className={css.bar}>
        <i style={{ width: `${percent}%` }} />
      </span>
      <Button onClick={stopMaking}>Stop</Button>
    </div>
  )
}
