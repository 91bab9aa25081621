import { POUND } from './factors'
import { type Measure, parseMeasure } from './measure'
import type { Parsed, UnitSystem } from './number'
import { fixed, NOT_KNOWN } from './text'

const MASS: Measure = {
  what: 'a mass',
  units: { kg: 1, kgs: 1, g: 0.001, t: 1_000, lb: POUND, lbs: POUND, lbm: POUND, pounds: POUND },
  bare: { us: 'lb', si: 'kg' },
  example: { us: '220 lb', si: '100 kg' },
}

/** A mass as people type it, in kg: 220 lb, 100 kg. A bare number is in lb or kg by the system. */
export function parseMass(text: string, system: UnitSystem): Parsed {
  return parseMeasure(text, MASS, system)
}

/** A mass to read: whole lb or kg from 10 up, one decimal below. */
export function formatMass(kg: number, system: UnitSystem): string {
  if (!Number.isFinite(kg)) return NOT_KNOWN
  const [value, unit] = system === 'us' ? [kg / POUND, 'lb'] : [kg, 'kg']
  return `${fixed(value, Math.abs(value) < 9.95 ? 1 : 0)} ${unit}`
}
