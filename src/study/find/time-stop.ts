/**
 * The falls in time of a layout, one by one, the longest spans first, with the rules asked after each: what fails by the
 * falls computed so far fails by all of them, for falls only add demands. So a layout that fails costs one fall or two.
 */
import type { Line, Plan } from '../../plan/types'
import { findingsOf } from '../../rules'
import type { Finding } from '../../rules/finding'
import { besideFalls } from '../energy-falls'
import { lineFacts } from '../facts'
import { installedStudy } from '../installed'
import { type LineInput, lineInput } from '../line-input'
import { type LineStatics, lineStatics } from '../line-statics'
import type { StudiedFall } from '../studied-fall'
import { rowsInUse } from '../study'
import { TIME_CORNERS, timeFallAt } from '../time-falls'
import { stops } from './bare'

/** Warnings that compare both methods need the energy falls, which are not given here: left out. */
const COMPARES = new Set(['time-method', 'obstacle-gap'])

/** Spans by their length, the longest first. */
function spansByLength(input: LineInput): number[] {
  const { x } = input.geometry
  return x
    .slice(1)
    .map((_, i) => i)
    .sort((a, b) => x[b + 1]! - x[b]! - (x[a + 1]! - x[a]!))
}

function failing(plan: Plan, input: LineInput, statics: LineStatics, dynamic: StudiedFall[]): Finding[] {
  const falls = { energy: [], dynamic, beside: besideFalls(input), noDynamic: null }
  const facts = lineFacts(input, installedStudy(input, statics), falls)
  const found = findingsOf({ plan, lines: [facts], rows: rowsInUse([{ input }]), obstacles: [] })
  return found.filter((f) => stops(f) && !COMPARES.has(f.rule))
}

export interface TimeCheck {
  /** What stops the layout; empty: all falls were computed and none of these rules fails. */
  fails: Finding[]
  /** All falls in time in the study's order where nothing stops it. */
  falls: StudiedFall[]
}

/** Computes the falls in time until one of them fails a rule, of those that `matter`. */
export function timeCheck(
  plan: Plan,
  line: Line,
  matters: (finding: Finding) => boolean = () => true,
): TimeCheck {
  const input = lineInput(plan, line)
  const statics = lineStatics(input.model)
  const known = new Map<string, StudiedFall>()
  const key = (span: number, who: number, corner: number): string => `${span}/${who}/${corner}`
  for (const span of spansByLength(input)) {
    for (const [w, who] of input.workers.entries()) {
      for (const [c, corner] of TIME_CORNERS.entries()) {
        const fall = timeFallAt(input, statics, plan.basis, corner, span, who)
        known.set(key(span, w, c), fall)
        if (corner.grip !== input.grip) continue
        const fails = failing(plan, input, statics, [...known.values()]).filter(matters)
        if (fails.length > 0) return { fails, falls: [] }
      }
    }
  }
  const falls = input.stanchions
    .slice(1)
    .flatMap((_, s) =>
      input.workers.flatMap((_w, w) => TIME_CORNERS.map((_c, c) => known.get(key(s, w, c))!)),
    )
  return { fails: [], falls }
}
