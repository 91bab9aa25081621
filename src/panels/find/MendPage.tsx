/** Small changes that make a failing finding hold, each computed through the whole study. */
import { Button } from '@mantine/core'
import type { JSX } from 'react'
import { applyMending, runMend, useFind } from '../../state/find/find-client'
import { findingOf } from '../../state/findings'
import { useApp } from '../../state/store'
import type { FindingKey } from '../../state/window-state'
import type { Mending } from '../../study/mend/mend'
import css from './find.module.css'
import { Working } from './Working'

export function MendPage({ finding, line }: { finding: FindingKey; line: string }): JSX.Element {
  const plan = useApp((s) => s.plan)
  const text = useApp((s) => findingOf(s.study.results, finding)?.text)
  const mend = useFind((s) =>
    s.mend && s.mend.finding.rule === finding.rule && s.mend.finding.subject === finding.subject
      ? s.mend
      : null,
  )
  return (
    <div className={css.page}>
      <p className={css.claim}>{text ?? 'This finding is gone.'}</p>
      <Working
        kind="mend"
        start="Look for small changes"
        onStart={() => void runMend(plan, { ...finding, line })}
      />
      {mend && mend.found.length > 0 ? <Found found={mend.found} /> : null}
      {mend?.whole && mend.found.length === 0 ? (
        <p className={css.claim}>None of the small changes that were tried makes this hold.</p>
      ) : null}
    </div>
  )
}

function Found({ found }: { found: Mending[] }): JSX.Element {
  return (
    <table className={css.table}>
      <thead>
        <tr>
          <th>Change</th>
          <th>Then</th>
          <th>Findings that fail then</th>
          <th aria-label="Use" />
        </tr>
      </thead>
      <tbody>
        {found.map((m) => (
          <tr key={m.label}>
            <td>{m.label}</td>
            <td>{m.after.text}</td>
            <td>
              {m.fails}
              {m.worse.length > 0
                ? `, new among them: ${m.worse.map((w) => w.text).join(' ')}`
                : ', none of them new'}
            </td>
            <td>
              <Button size="compact-sm" onClick={() => applyMending(m)}>
                Make it
              </Button>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
