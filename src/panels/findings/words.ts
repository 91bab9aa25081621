/** Short words for the rules, and how a value stands against its limit. */
import { formatQuantity, type UnitSystem } from '../../plan/units'
import type { Finding } from '../../study/results'

export const ruleWord: Record<string, string> = {
  'anchor-spacing': 'Span between stanchions',
  'line-slope': 'Slope of the line',
  'end-tie-back': 'Tie-back at the end',
  'tie-back-angle': 'Tie-back angle',
  'tie-back-distance': 'Tie-back distance',
  'tie-back-side': 'Tie-back side',
  'tie-back-loops-distinct': 'Tie-back on two loops',
  'tie-back-loops-adjacent': 'Tie-back loops side by side',
  'strap-length': 'Strap length',
  'tie-back-strength': 'Tie-back strength',
  'loops-engaged': 'Loops on the bracket',
  'loops-beside': 'Loops on both sides',
  'bar-size': 'Bar of the loops',
  'bolt-edge': 'Bolt to the edge',
  'loop-strength': 'Loop strength',
  'loop-side-pull': 'Loop pulled askew',
  'stanchion-strength': 'Stanchion strength',
  'wire-rope-strength': 'Wire rope strength',
  'hardware-strength': 'Hardware strength',
  'absorber-runs-out': 'Line absorber runs out',
  'rope-held': 'Rope held at a stanchion',
  'eye-offset': 'Eye before tensioning',
  'free-fall': 'Free fall',
  'arrest-force': 'Arrest force',
  deceleration: 'Deceleration distance',
  'connector-runs-out': 'Connector runs out',
  'worker-mass': 'Mass of the worker',
  'obstacle-gap': 'Room above',
  'time-method': 'Fall in time pulls harder',
  'rescue-plan': 'Rescue plan',
}

/** Rules whose value must not be below the limit; of the rest it must not be above. */
const atLeast = new Set([
  'end-tie-back',
  'tie-back-angle',
  'tie-back-distance',
  'tie-back-side',
  'tie-back-loops-distinct',
  'tie-back-strength',
  'loops-engaged',
  'loops-beside',
  'bar-size',
  'bolt-edge',
  'loop-strength',
  'stanchion-strength',
  'wire-rope-strength',
  'hardware-strength',
  'rope-held',
  'obstacle-gap',
  'rescue-plan',
])

/**
 * Whether the limit is a lower one. The margin tells it, also which end of a range the limit is; where there is no margin,
 * or a value right at its limit, the rule does.
 */
function isLower({ rule, value, limit, margin }: Finding): boolean {
  if (value === null || limit === null || margin == null) return atLeast.has(rule)
  const [above, below] = [Math.abs(margin - (value - limit)), Math.abs(margin - (limit - value))]
  return above === below ? atLeast.has(rule) : above < below
}

export function limitWords(finding: Finding, units: UnitSystem): string {
  if (finding.rule === 'loop-side-pull') return 'told always'
  if (finding.limit === null) return ''
  const limit = formatQuantity(finding.limit, finding.unit, units)
  return `${isLower(finding) ? 'at least' : 'at most'} ${limit}`
}
