/** Why the chosen finding is as it is: its words, the sum or formula with the values put in, where it comes from, notes. */
import { CloseButton } from '@mantine/core'
import type { JSX } from 'react'
import { formatQuantity } from '../../plan/units'
import { chooseFinding } from '../../state/actions'
import { explain } from '../../state/explain/explain'
import type { Explanation } from '../../state/explain/types'
import { findingOf } from '../../state/findings'
import { useApp } from '../../state/store'
import css from './findings.module.css'
import { Notes } from './Notes'
import { ruleWord } from './words'

export function Why(): JSX.Element | null {
  const results = useApp((s) => s.study.results)
  const key = useApp((s) => s.finding)
  const plan = useApp((s) => s.study.ofPlan)
  const units = useApp((s) => s.units)
  const finding = findingOf(results, key)
  if (!finding || !results || !plan) return null
  const tree = explain(plan, results, finding)
  return (
    <section className={css.why} aria-label="Why" data-testid="why">
      <div className={css.whyHead}>
        <h3>
          Why: {ruleWord[finding.rule] ?? finding.rule}
          {finding.value === null ? '' : ` ${formatQuantity(finding.value, finding.unit, units)}`}
        </h3>
        <CloseButton size="sm" aria-label="Close" onClick={() => chooseFinding(null)} />
      </div>
      <p className={css.text}>{finding.text}</p>
      {tree ? <Tree tree={tree} units={units} /> : null}
      <p className={css.source}>From: {finding.source}</p>
      <Notes finding={finding} />
    </section>
  )
}

function Tree({ tree, units }: { tree: Explanation; units: 'us' | 'si' }): JSX.Element {
  return (
    <>
      {tree.formula ? <p className={css.formula}>{tree.formula}</p> : null}
      <table className={css.sum}>
        <tbody>
          {tree.rows.map((row) => (
            <tr key={row.label} data-total={row.total ?? false}>
              <th scope="row">{row.label}</th>
              <td>{formatQuantity(row.value, row.unit, units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {tree.method ? <p className={css.source}>{tree.method}</p> : null}
      {tree.parts?.map((part) => (
        <details key={part.title}>
          <summary>{part.title}</summary>
          <Tree tree={part} units={units} />
        </details>
      ))}
    </>
  )
}
