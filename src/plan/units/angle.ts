import { type Measure, parseMeasure } from './measure'
import type { Parsed, UnitSystem } from './number'
import { fixed, NOT_KNOWN } from './text'

const DEGREE = Math.PI / 180

const ANGLE: Measure = {
  what: 'an angle',
  units: { '°': 1, deg: 1, degree: 1, degrees: 1, rad: 1 / DEGREE },
  bare: { us: 'deg', si: 'deg' },
  example: { us: '45 deg', si: '45 deg' },
}

/** An angle as people type it, in degrees: 45, 45°, 38.2 deg. */
export function parseAngle(text: string, system: UnitSystem = 'si'): Parsed {
  return parseMeasure(text, ANGLE, system)
}

/** An angle to read, to a tenth of a degree. */
export function formatAngle(degrees: number): string {
  return Number.isFinite(degrees) ? `${fixed(degrees, 1)}°` : NOT_KNOWN
}
