/** A comparison in words, for a terminal, a panel and a page of the package. */
import type { Plan } from '../../plan/types'
import { formatQuantity, type UnitSystem } from '../../plan/units'
import { ruleById } from '../../rules'
import { nameOf } from '../names'
import { statusWords } from '../status'
import type { FieldChange } from './fields'
import type { Change } from './plans'
import type { FindingChange, GoverningChange } from './results'

/** Names of fields as people say them; others are split into words. */
const FIELD_WORDS: Record<string, string> = {
  dRingHeight: 'D-ring height',
  axialStiffness: 'EA',
  'serviceTemperature.low': 'lowest service temperature',
  'serviceTemperature.high': 'highest service temperature',
}

const fieldWords = (field: string): string =>
  FIELD_WORDS[field] ??
  field
    .replace(/\./g, ', ')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()

function valueText(value: unknown, unit: string | null, units: UnitSystem): string {
  if (value === undefined || value === null) return 'none'
  if (typeof value === 'number' && unit !== null) return formatQuantity(value, unit, units)
  if (typeof value === 'string') return value
  if (Array.isArray(value)) return `(${value.map((v) => valueText(v, null, units)).join(', ')})`
  return typeof value === 'object' ? JSON.stringify(value) : String(value)
}

/** "station 21 ft to 22 ft (1 ft more)". */
function fieldText(f: FieldChange, units: UnitSystem): string {
  const name = fieldWords(f.field)
  const texts = [valueText(f.before, f.unit, units), valueText(f.after, f.unit, units)]
  const moved =
    f.unit === 'm' && typeof f.before === 'number' && typeof f.after === 'number'
      ? ` (${apartText(f.after - f.before, units)})`
      : ''
  return `${name} ${texts[0]} to ${texts[1]}${moved}`
}

/** "4 ft more", m; what would read as nothing is told to be that little. */
function apartText(by: number, units: UnitSystem): string {
  const text = formatQuantity(Math.abs(by), 'm', units)
  if (text === formatQuantity(0, 'm', units)) return 'less apart than is printed'
  return `${text} ${by > 0 ? 'more' : 'less'}`
}

export function changeText(change: Change, plan: Plan, units: UnitSystem): string {
  const name = change.name === change.id ? change.id : `${change.name} (${change.id})`
  const of = change.of ? ` of ${nameOf(plan, change.of)}` : ''
  const what =
    change.what === 'plan' || change.what === 'limits' ? change.name : `${change.what} ${name}${of}`
  if (change.how !== 'changed') return `${what}: ${change.how}`
  return `${what}: ${change.fields.map((f) => fieldText(f, units)).join('; ')}`
}

export function findingChangeText(c: FindingChange, plan: Plan, units: UnitSystem): string {
  const title = ruleById(c.rule)?.title ?? c.rule
  const side = (f: FindingChange['before']): string =>
    f === null ? 'not there' : `${statusWords[f.status]} (${formatQuantity(f.value, f.unit, units)})`
  return `${title}, ${nameOf(plan, c.subject)}: ${side(c.before)} to ${side(c.after)}`
}

export const figureWords: Record<GoverningChange['figure'], string> = {
  tension: 'greatest tension',
  arrestForce: 'arrest force on one body',
  clearance: 'clearance',
  wireRopeSafetyFactor: 'wire rope, strength over demand',
}

export function governingText(c: GoverningChange, plan: Plan, units: UnitSystem): string {
  const [a, b] = [c.before, c.after].map((v) => formatQuantity(v, c.unit, units))
  return `${nameOf(plan, c.line)}, ${figureWords[c.figure]}: ${a} to ${b}`
}
