/**
 * The explanation tree of a finding, from what the study already says: it puts numbers beside their names and formulas and
 * computes none that the results do not have.
 */
import type { Plan } from '../../plan/types'
import type { Finding, Results } from '../../study/results'
import { explainEnd } from './end-stanchion'
import { explainFall, explainGap } from './fall'
import { explainStrength } from './strength'
import type { Explanation } from './types'

const fallRules = new Set([
  'free-fall',
  'arrest-force',
  'deceleration',
  'connector-runs-out',
  'absorber-runs-out',
])
const endRules = new Set([
  'tie-back-strength',
  'stanchion-strength',
  'loop-side-pull',
  'loop-strength',
  'tie-back-angle',
])
const strengthRules = new Set(['wire-rope-strength', 'hardware-strength', 'time-method', 'rope-held'])

export function explain(plan: Plan, results: Results, finding: Finding): Explanation | null {
  if (finding.rule === 'obstacle-gap') return explainGap(plan, results, finding)
  if (fallRules.has(finding.rule)) return explainFall(plan, results, finding)
  if (endRules.has(finding.rule)) return explainEnd(plan, results, finding)
  if (strengthRules.has(finding.rule)) return explainStrength(plan, results, finding)
  return plainMargin(finding)
}

/** Value against limit, for rules that compare two plain figures. */
export function plainMargin(finding: Finding): Explanation | null {
  if (finding.value === null || finding.limit === null) return null
  const rows = [
    { label: 'found', value: finding.value, unit: finding.unit },
    { label: 'limit', value: finding.limit, unit: finding.unit },
  ]
  const margin =
    finding.margin === null || finding.margin === undefined
      ? []
      : [{ label: 'margin', value: finding.margin, unit: finding.unit, total: true }]
  return { title: 'Against the limit', rows: [...rows, ...margin] }
}
