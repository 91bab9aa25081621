/** How many findings fail, want a look, are not known, hold: shape, number and word. */
import { Hourglass } from 'lucide-react'
import type { JSX, ReactNode } from 'react'
import { statusCounts } from '../../state/derived'
import { useApp } from '../../state/store'
import type { FindingStatus } from '../../study/results'
import { StatusMark, statusColour } from '../words/StatusMark'
import { statusOrder } from '../words/status'
import css from './header.module.css'

const word: Record<FindingStatus, [string, string]> = {
  fail: ['fails', 'fail'],
  warn: ['look here', 'look here'],
  unknown: ['not known', 'not known'],
  pass: ['holds', 'hold'],
}

export function Counts(): JSX.Element {
  const results = useApp((s) => s.study.results)
  const counts = statusCounts(results)
  const busy = useApp((s) => s.study.status === 'running')
  const shown = statusOrder.filter((status) => status !== 'unknown' || counts.unknown > 0)
  return (
    <output className={css.counts} aria-label="Findings" data-testid="counts">
      {/* Noughts would read as if nothing failed. */}
      {results === null ? (
        <Count status="unknown">nothing computed yet</Count>
      ) : (
        shown.map((status) => (
          <Count key={status} status={status} none={counts[status] === 0}>
            {counts[status]} {word[status][counts[status] === 1 ? 0 : 1]}
          </Count>
        ))
      )}
      {/* A mark that stands still: one that turns has the whole window drawn for it, in the way of what is computed. */}
      <span className={css.busy}>
        {busy ? <Hourglass size={12} role="img" aria-label="Computing" /> : null}
      </span>
    </output>
  )
}

interface CountProps {
  status: FindingStatus
  /** Nothing has this status: then its colour has nothing to say. */
  none?: boolean
  children: ReactNode
}

const Count = ({ status, none = false, children }: CountProps): JSX.Element => (
  <span
    className={css.count}
    style={{ color: none ? 'var(--quiet-ink)' : statusColour[status] }}
    data-status={status}
  >
    <StatusMark status={status} quiet={none} />
    {children}
  </span>
)
