import { type JSX, useEffect, useRef } from 'react'
import { formatQuantity } from '../../plan/units'
import { hoverFinding } from '../../state/actions'
import { isFinding } from '../../state/derived'
import { chooseAndFly } from '../../state/findings'
import { refOfId, sameRef } from '../../state/refs'
import { useApp } from '../../state/store'
import type { Finding } from '../../study/results'
import { StatusMark, statusColour } from '../words/StatusMark'
import { refName, statusWord } from '../words/status'
import css from './findings.module.css'
import { limitWords, ruleWord } from './words'

/** One finding: its shape, what, where, how much, against what. Hover shows it in scene and tape, a click flies there. */
export function FindingRow({ finding }: { finding: Finding }): JSX.Element {
  const units = useApp((s) => s.units)
  const chosen = useApp((s) => isFinding(finding, s.finding))
  const plan = useApp((s) => s.plan)
  // Made anew on every call, so it is no selector of the store.
  const ref = refOfId(plan, finding.subject)
  const where = useApp((s) => placeWords(s.plan, finding))
  const hovered = useApp((s) => s.hover !== null && ref !== null && sameRef(s.hover, ref))
  const noted = useApp((s) =>
    (s.plan.records ?? []).some((r) => r.kind === 'finding-note' && isFinding(finding, r)),
  )
  const row = useRef<HTMLButtonElement>(null)
  useEffect(() => {
    if (chosen) row.current?.scrollIntoView({ block: 'nearest' })
  }, [chosen])
  const key = { rule: finding.rule, subject: finding.subject }
  return (
    <button
      ref={row}
      type="button"
      className={css.finding}
      data-status={finding.status}
      data-rule={finding.rule}
      data-subject={finding.subject}
      data-hover={hovered}
      aria-pressed={chosen}
      aria-label={`${statusWord[finding.status]}: ${finding.text}`}
      onClick={() => chooseAndFly(key)}
      onMouseEnter={() => hoverFinding(key)}
      onMouseLeave={() => hoverFinding(null)}
      onFocus={() => hoverFinding(key)}
      onBlur={() => hoverFinding(null)}
    >
      <span className={css.mark}>
        <StatusMark status={finding.status} />
      </span>
      <span>
        <span className={css.what}>{ruleWord[finding.rule] ?? finding.rule}</span>
        <br />
        <span className={css.where}>
          {where}
          {noted ? ', noted' : ''}
        </span>
      </span>
      <span>
        <span className={css.value} style={{ color: statusColour[finding.status], display: 'block' }}>
          {valueWords(finding, units)}
        </span>
        <span className={css.limit} style={{ display: 'block' }}>
          {limitWords(finding, units)}
        </span>
      </span>
    </button>
  )
}

const valueWords = (finding: Finding, units: 'us' | 'si'): string =>
  finding.value === null && finding.status === 'pass'
    ? 'holds'
    : formatQuantity(finding.value, finding.unit, units)

function placeWords(plan: Parameters<typeof refName>[0], finding: Finding): string {
  const ref = refOfId(plan, finding.subject)
  const name = ref ? refName(plan, ref) : finding.subject
  const line =
    finding.line && finding.line !== finding.subject
      ? plan.lines.find((l) => l.id === finding.line)
      : undefined
  return line ? `${name}, ${line.name || line.id}` : name
}
