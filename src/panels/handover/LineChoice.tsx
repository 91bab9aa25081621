import type { JSX } from 'react'
import { useApp } from '../../state/store'
import css from './handover.module.css'

/** Which line the records below are about. */
export function LineChoice(props: { line: string; choose: (id: string) => void }): JSX.Element {
  const lines = useApp((s) => s.plan.lines)
  return (
    <select
      className={css.choose}
      aria-label="Line"
      value={props.line}
      onChange={(e) => props.choose(e.currentTarget.value)}
    >
      {lines.map((l) => (
        <option key={l.id} value={l.id}>
          {l.name || l.id}
        </option>
      ))}
    </select>
  )
}
