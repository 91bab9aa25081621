/** What was checked, worst first, then what holds by margin; under it why the chosen one is as it is. */
import { type JSX, useMemo } from 'react'
import { sortedFindings } from '../../state/derived'
import { useApp } from '../../state/store'
import type { Finding } from '../../study/results'
import { FindingRow } from './FindingRow'
import css from './findings.module.css'
import { useRows } from './rows'
import { StudyNotice } from './StudyNotice'
import { Why } from './Why'

export function Findings(): JSX.Element {
  const findings = useApp((s) => sortedFindings(s.study.results))
  const lines = useApp((s) => s.plan.lines.length)
  return (
    <div className={css.panel}>
      <div className={css.head}>
        <h2>Findings</h2>
        <span className={css.quiet}>worst first</span>
      </div>
      <StudyNotice />
      {lines === 0 ? <NothingToCheck /> : <List findings={findings} />}
      <Why />
    </div>
  )
}

function NothingToCheck(): JSX.Element {
  const girders = useApp((s) => s.plan.girders.length)
  return (
    <p className={css.empty}>
      {girders === 0
        ? 'There is nothing to check yet. Draw or paste a girder in Site, then draw a line along it in Rig.'
        : 'There is nothing to check yet. Draw a line along a girder: press R, then click twice on it.'}
    </p>
  )
}

function List({ findings }: { findings: Finding[] }): JSX.Element {
  const [open, holding] = useMemo(
    () => [findings.filter((f) => f.status !== 'pass'), findings.filter((f) => f.status === 'pass')],
    [findings],
  )
  const rowOf = useRows()
  return (
    <div className={css.list} data-testid="findings">
      {open.map((f) => (
        <FindingRow key={keyOf(f)} {...rowOf(f)} />
      ))}
      {holding.length > 0 ? <div className={css.section}>Holds, least margin first</div> : null}
      {holding.map((f) => (
        <FindingRow key={keyOf(f)} {...rowOf(f)} />
      ))}
    </div>
  )
}

const keyOf = (f: Finding): string => `${f.rule} ${f.subject}`
