import { type JSX, memo, useEffect, useRef } from 'react'
import { formatQuantity, type UnitSystem } from '../../plan/units'
import { hoverFinding } from '../../state/actions'
import { chooseAndFly } from '../../state/findings'
import type { Finding } from '../../study/results'
import { StatusMark, statusColour } from '../words/StatusMark'
import { statusWord } from '../words/status'
import css from './findings.module.css'
import { limitWords, ruleWord } from './words'

export interface RowProps {
  finding: Finding
  units: UnitSystem
  /** What it is about and on which line, in words. */
  where: string
  chosen: boolean
  hovered: boolean
  noted: boolean
}

/**
 * One finding: its shape, what, where, how much, against what. Hover shows it in scene and tape, a click flies there. Asks
 * nothing of the store: there are hundreds of rows, and each would be asked at every move of the hand.
 */
export const FindingRow = memo(function FindingRow(props: RowProps): JSX.Element {
  const { finding, units, where, chosen, hovered, noted } = props
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
})

const valueWords = (finding: Finding, units: UnitSystem): string =>
  finding.value === null && finding.status === 'pass'
    ? 'holds'
    : formatQuantity(finding.value, finding.unit, units)
