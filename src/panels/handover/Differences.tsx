/** Two plans side by side: tapes above each other, what moved, numbers and findings before and after. */
import { Checkbox } from '@mantine/core'
import type { JSX } from 'react'
import { changeText } from '../../handover/compare'
import { findingRows, governingRows, type SideBySide } from '../../handover/compare/tables'
import type { Compared } from '../../handover/worker/papers-worker'
import type { Plan } from '../../plan/types'
import { select } from '../../state/actions'
import { chooseAndFly } from '../../state/findings'
import { refOfId } from '../../state/refs'
import { app, useApp } from '../../state/store'
import { BesideChoice } from './BesideChoice'
import css from './handover.module.css'
import { useMaking } from './making'
import { TapePairs } from './TapePairs'

export interface Found {
  /** The open plan as it was when both were compared. */
  of: Plan
  name: string
  compared: Compared
}

export function Differences({ found, stale }: { found: Found; stale: boolean }): JSX.Element {
  const units = useApp((s) => s.units)
  const { of, name, compared } = found
  const { comparison: c, before } = compared
  const nothing = c.changes.length + c.governing.length + c.findings.length === 0
  const goTo = (x: (typeof c.findings)[number]) => () => chooseAndFly({ rule: x.rule, subject: x.subject })
  return (
    <div data-testid="comparison">
      <h3>Against {name}</h3>
      {stale ? (
        <p className={css.state}>The plan has changed since; choose again to compare it as it is now.</p>
      ) : null}
      {nothing ? <p>Nothing that counts differs.</p> : null}
      <PageChoice name={name} other={before.plan} />
      <BesideChoice />
      <TapePairs compared={compared} />
      {c.changes.length > 0 ? <h3>What moved or changed</h3> : null}
      <ul className={css.log}>
        {c.changes.map((x) => (
          <li key={`${x.what} ${x.of} ${x.id}`}>
            <Linked text={changeText(x, of, units)} go={() => select(refOfId(app.getState().plan, x.id))} />
          </li>
        ))}
      </ul>
      <Rows title="Governing numbers" rows={governingRows(c, of, units)} />
      <Rows title="Findings" rows={findingRows(c, of, units)} go={c.findings.map(goTo)} />
    </div>
  )
}

function PageChoice({ name, other }: { name: string; other: Plan }): JSX.Element {
  const inPackage = useMaking((s) => s.compareWith?.plan === other)
  return (
    <Checkbox
      size="xs"
      label="A page about this in the calculation package"
      checked={inPackage}
      onChange={(e) =>
        useMaking.setState({ compareWith: e.currentTarget.checked ? { plan: other, name } : null })
      }
    />
  )
}

function Rows(props: { title: string; rows: SideBySide[]; go?: (() => void)[] }): JSX.Element | null {
  const { title, rows, go } = props
  if (rows.length === 0) return null
  return (
    <table style={{ width: '100%' }} aria-label={title}>
      <thead>
        <tr>
          <th style={{ textAlign: 'left' }}>{title}</th>
          <th style={{ textAlign: 'left' }}>Before</th>
          <th style={{ textAlign: 'left' }}>After</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((r, i) => (
          <tr key={r.key}>
            <td>{go?.[i] ? <Linked text={r.what} go={go[i]} /> : r.what}</td>
            <td>{r.before}</td>
            <td>{r.after}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

const Linked = ({ text, go }: { text: string; go: () => void }): JSX.Element => (
  <button type="button" className={css.link} onClick={go}>
    {text}
  </button>
)
