/** Layouts that pass, side by side, with what limits each; what is proven; and why each lower count does not do. */
import { Button } from '@mantine/core'
import type { JSX } from 'react'
import type { Plan } from '../../plan/types'
import { formatQuantity } from '../../plan/units'
import { applyLayout } from '../../state/find/find-client'
import { useApp } from '../../state/store'
import { choiceWords } from '../../study/find/choices'
import type { Candidate, CountReport, FindProgress, FindResult } from '../../study/find/types'
import { claimWords } from '../../study/find/words'
import { ruleWord } from '../findings/words'
import css from './find.module.css'

export function Alternatives(props: {
  line: string
  plan: Plan
  result: FindResult | null
  progress: FindProgress | null
  running: boolean
}): JSX.Element {
  const { result, progress, plan } = props
  const list = result?.alternatives ?? (progress?.best ? [progress.best] : [])
  return (
    <section aria-label="What was found" data-testid="found">
      {props.running || result ? null : (
        <p className={css.claim}>Stopped. Nothing is proven; the best so far is below.</p>
      )}
      {result?.outcome === 'none' ? (
        <p className={css.claim}>No layout was found that passes every rule.</p>
      ) : null}
      {result
        ? claimWords(result).map((text) => (
            <p key={text} className={css.claim}>
              {text}
            </p>
          ))
        : null}
      {list.length > 0 ? <Table line={props.line} plan={plan} list={list} /> : null}
      {result && result.reasons.length > 0 ? (
        <ul className={css.reasons}>
          {result.reasons.map((r) => (
            <li key={r.rule + r.text}>
              {ruleWord[r.rule] ?? r.rule}: {r.text}
            </li>
          ))}
        </ul>
      ) : null}
      <Counts counts={result?.counts ?? progress?.counts ?? []} />
      {result ? <Space space={result.space} /> : null}
    </section>
  )
}

function Table({ line, plan, list }: { line: string; plan: Plan; list: Candidate[] }): JSX.Element {
  const units = useApp((s) => s.units)
  const say = (value: number | null, unit: string): string => formatQuantity(value, unit, units)
  return (
    <table className={css.table}>
      <thead>
        <tr>
          <th>Stanchions</th>
          <th>At</th>
          <th>Parts</th>
          <th>Clearance</th>
          <th>Tension</th>
          <th>Least gap</th>
          <th>Limited by</th>
          <th aria-label="Use" />
        </tr>
      </thead>
      <tbody>
        {list.map((c) => (
          <tr key={JSON.stringify([c.layout.gaps, c.layout.choice])}>
            <td>{c.stanchions}</td>
            <td>{c.layout.stations.map((s) => say(s, 'm')).join(', ')}</td>
            <td>
              {c.parts}: {choiceWords(plan, c.layout.choice, say(c.layout.choice.pretension, 'N'))}
            </td>
            <td>{say(c.clearance, 'm')}</td>
            <td>{say(c.tension, 'N')}</td>
            <td>{say(c.gap, 'm')}</td>
            <td>{limits(c)}</td>
            <td>
              <Button size="compact-sm" onClick={() => applyLayout(line, c)}>
                Use this
              </Button>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** The two rules that hold by least, with what is left of each limit. */
const limits = (c: Candidate): JSX.Element[] =>
  c.limiting.slice(0, 2).map((l) => (
    <div key={l.rule + l.subject} title={l.text}>
      {ruleWord[l.rule] ?? l.rule}, {(100 * l.share).toFixed(l.share < 0.1 ? 1 : 0)} % to spare
    </div>
  ))

function Counts({ counts }: { counts: CountReport[] }): JSX.Element | null {
  if (counts.length === 0) return null
  return (
    <ul className={css.reasons}>
      {counts.map((c) => (
        <li key={c.stanchions}>
          {c.stanchions} stanchions: {c.status}
          {c.studied > 0 ? `, ${c.studied} studied whole` : ''}.{' '}
          {c.status === 'passes'
            ? ''
            : c.reasons
                .slice(0, 3)
                .map((r) => r.text)
                .join(' ')}
        </li>
      ))}
    </ul>
  )
}

const Space = ({ space }: { space: string[] }): JSX.Element => (
  <details className={css.quiet}>
    <summary>What was looked at</summary>
    <ul className={css.reasons}>
      {space.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
  </details>
)
