/**
 * What rules say of a line before any fall on it is computed: places, tie-backs, connectors, falls beside a stanchion.
 * A rule that fails here fails in every layout that keeps what it judged, for falls only add demands.
 */
import type { Line, Plan } from '../../plan/types'
import { findingsOf } from '../../rules'
import type { Finding } from '../../rules/finding'
import { besideFalls } from '../energy-falls'
import { lineFacts } from '../facts'
import type { InstalledStudy } from '../installed'
import { type LineInput, lineInput } from '../line-input'
import { rowsInUse } from '../study'

const NOT_INSTALLED: InstalledStudy = {
  results: { tension: null, sag: [], wireRopeLength: null, eyeOffset: null, takeUp: null },
  takeUp: null,
  chainLength: null,
  hardwareLength: 0,
  absorberLength: 0,
  why: 'the line is not laid out yet',
}

/** Findings of a line without falls; what needs them is `unknown`. */
export function bareFindings(plan: Plan, line: Line, input: LineInput = lineInput(plan, line)): Finding[] {
  const falls = { energy: [], dynamic: [], beside: besideFalls(input), noDynamic: 'no fall was computed' }
  const facts = lineFacts(input, NOT_INSTALLED, falls)
  return findingsOf({ plan, lines: [facts], rows: rowsInUse([{ input }]), obstacles: [] })
}

/** A recorded rescue plan is no matter of the layout. */
const OUTSIDE = new Set(['rescue-plan'])

/** Whether a finding stops a layout. */
export const stops = (f: Finding): boolean => f.status === 'fail' && !OUTSIDE.has(f.rule)
