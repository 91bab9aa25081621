/** A layout by its energy falls alone, without its room: the cheap look before the whole study. */
import type { Line, Plan } from '../../plan/types'
import { findingsOf } from '../../rules'
import type { Finding } from '../../rules/finding'
import { besideFalls, midSpanFalls } from '../energy-falls'
import { lineFacts } from '../facts'
import { installedStudy } from '../installed'
import { lineInput } from '../line-input'
import { lineStatics } from '../line-statics'
import { studiedEnergyFall } from '../studied-fall'
import { rowsInUse } from '../study'

/** Findings of a line by energy at mid-span and beside stanchions; none about obstacles. */
export function energyFindings(plan: Plan, line: Line): Finding[] {
  const input = lineInput(plan, line)
  const statics = lineStatics(input.model)
  const energy = midSpanFalls(input, statics).map((c) => studiedEnergyFall(c, plan.basis.marginBelow))
  const noDynamic = 'the falls in time were left out'
  const falls = { energy, dynamic: [], beside: besideFalls(input), noDynamic }
  const facts = lineFacts(input, installedStudy(input, statics), falls)
  return findingsOf({ plan, lines: [facts], rows: rowsInUse([{ input }]), obstacles: [] })
}
