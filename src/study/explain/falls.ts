/** Sums behind the figures of a fall, by the corner that governs. */
import type { Plan } from '../../plan/types'
import type { Corner, Demand, LineFacts } from '../../rules/context'
import { isKnown } from '../../rules/context'
import { cornerWords } from '../../rules/words'
import { derived, type Explained, found } from '../../solver/explain'
import {
  explainEnergyBalance,
  explainExtension,
  explainFreeFall,
  type FallFigures,
} from '../../solver/explain-fall'
import { besideFalls } from '../energy-falls'
import type { LineStudy } from '../line-study'
import { besideFigures, caseOf, figuresOf } from './figures'

export type Figure = 'freeFall' | 'arrestForce' | 'extension' | 'torn' | 'tension' | 'absorber'

const NAMES: Record<Figure, [string, string]> = {
  freeFall: ['Free fall', 'm'],
  arrestForce: ['Force on one body', 'N'],
  extension: ['Connector extension', 'm'],
  torn: ['Torn length of the connector', 'm'],
  tension: ['Greatest tension in the wire rope', 'N'],
  absorber: ['Extension of the line absorber', 'm'],
}

const IN_TIME =
  'fall in time: lumped masses on the rope, integrated to rest; tension as the greatest mean over 5 ms'

/** Figures of the energy fall that a corner names; null for falls in time and where it was not computed. */
function cornerFigures(plan: Plan, line: LineStudy, corner: Corner): FallFigures | null {
  if (corner.method !== 'energy') return null
  if (corner.beside === undefined) {
    const at = caseOf(line, corner)
    return at && figuresOf(plan, at)
  }
  const at = besideFalls(line.input).find(
    (c) => c.stanchion === corner.beside && c.worker.id === corner.worker && c.end === corner.connector,
  )
  const head = line.input.stanchions.find((s) => s.stanchion.id === corner.beside)
  return at && head ? besideFigures(plan, at, head.part.height) : null
}

/** The sum behind one figure of the fall that a demand is from. */
export function explainFigure(plan: Plan, line: LineStudy, demand: Demand, figure: Figure): Explained {
  const [label, unit] = NAMES[figure]
  const value = isKnown(demand.value) ? demand.value : null
  const { corner } = demand
  const words = corner ? cornerWords(corner, line.facts) : 'worst of all falls computed'
  const f = corner ? cornerFigures(plan, line, corner) : null
  if (f === null)
    return found(label, value, unit, corner?.method === 'dynamic' ? `${IN_TIME} (${words})` : words)
  return { ...treeOf(figure, f, label, unit, value), note: words }
}

function treeOf(
  figure: Figure,
  f: FallFigures,
  label: string,
  unit: string,
  value: number | null,
): Explained {
  if (figure === 'freeFall') return explainFreeFall(f)
  if (figure === 'extension') return explainExtension(f)
  const method =
    figure === 'tension' || figure === 'absorber'
      ? 'the line under the load at which the energies balance: exact elastic catenaries'
      : 'root of the energy balance'
  return found(label, value, unit, method, [explainEnergyBalance(f)])
}

/** The greater of the worst tension by energy and the worst in time. */
export function explainTension(plan: Plan, line: LineStudy, facts: LineFacts, demand: Demand): Explained {
  const chosen = explainFigure(plan, line, demand, 'tension')
  const other = demand.corner?.method === 'energy' ? facts.timeTension : facts.energyTension
  if (demand.corner === undefined || demand.corner.grip !== (facts.line.grip ?? 'sliding')) return chosen
  if (!isKnown(other)) return chosen
  const rest =
    demand.corner.method === 'energy'
      ? found('Greatest tension in time', other, 'N', IN_TIME)
      : found('Greatest tension by energy', other, 'N', 'energy balance on the line law')
  return derived('greatest', 'Governing tension', [chosen, rest], { unit: 'N' })
}
