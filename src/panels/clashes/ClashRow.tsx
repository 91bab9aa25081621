import type { JSX } from 'react'
import { formatLength } from '../../plan/units'
import { hover } from '../../state/actions'
import type { Clash } from '../../state/clashes/clash-list'
import { chooseClash } from '../../state/clashes/clash-store'
import { useApp } from '../../state/store'
import type { FindingStatus } from '../../study/results'
import { StatusMark, statusColour } from '../words/StatusMark'
import css from './clashes.module.css'

const statusOf: Record<Clash['state'], FindingStatus> = {
  clash: 'fail',
  near: 'warn',
  clear: 'pass',
  beside: 'pass',
  unknown: 'unknown',
}

const stateWord: Record<Clash['state'], string> = {
  clash: 'clash',
  near: 'near',
  clear: 'room to spare',
  beside: 'beside the room',
  unknown: 'not known',
}

/** One obstacle: what, how near, whose fall, from where. A click flies there. */
export function ClashRow({ clash, chosen }: { clash: Clash; chosen: boolean }): JSX.Element {
  const units = useApp((s) => s.units)
  const { result, state } = clash
  const status = statusOf[state]
  return (
    <button
      type="button"
      className={css.row}
      aria-pressed={chosen}
      data-clash={result.id}
      data-state={state}
      onClick={() => chooseClash(result.id)}
      onMouseEnter={() => hover({ kind: 'obstacle', id: result.id })}
      onMouseLeave={() => hover(null)}
    >
      <StatusMark status={status} />
      <span>
        <span className={css.what}>{clash.name}</span>
        <br />
        <span className={css.quiet}>{whereWords(clash, units)}</span>
      </span>
      <span className={css.value} style={{ color: statusColour[status] }}>
        {gapWords(clash, units)}
        <br />
        <span className={css.quiet}>{stateWord[state]}</span>
      </span>
    </button>
  )
}

/** The gap as a length, or in words where there is none. */
function gapWords({ result, state }: Clash, units: 'us' | 'si'): string {
  if (state === 'unknown') return ''
  if (result.gap !== null) return formatLength(result.gap, units)
  if (result.horizontal === null || result.horizontal === undefined) return ''
  return formatLength(result.horizontal, units)
}

function whereWords(clash: Clash, units: 'us' | 'si'): string {
  const { result } = clash
  if (result.unknown !== undefined) return result.unknown
  if (result.note) return result.note
  const at = result.station === null ? [] : [`station ${formatLength(result.station, units)}`]
  return [clash.lineName, clash.workerName, ...at].filter((w) => w !== '').join(', ')
}
