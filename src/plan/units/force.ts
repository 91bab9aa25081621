import { POUND_FORCE, STANDARD_GRAVITY } from './factors'
import { type Measure, parseMeasure } from './measure'
import type { Parsed, UnitSystem } from './number'
import { figures, fixed, NOT_KNOWN } from './text'

const FORCE: Measure = {
  what: 'a force',
  units: {
    n: 1,
    dan: 10,
    kn: 1_000,
    mn: 1_000_000,
    lbf: POUND_FORCE,
    lb: POUND_FORCE,
    lbs: POUND_FORCE,
    pounds: POUND_FORCE,
    k: 1_000 * POUND_FORCE,
    kip: 1_000 * POUND_FORCE,
    kips: 1_000 * POUND_FORCE,
    kgf: STANDARD_GRAVITY,
  },
  bare: { us: 'lbf', si: 'kn' },
  example: { us: '1,000 lbf or 1 kip', si: '4.45 kN' },
}

/** A force as people type it, in N: 1,000 lbf, 1 kip, 4.45 kN. A bare number is in lbf or kN by the system. */
export function parseForce(text: string, system: UnitSystem): Parsed {
  return parseMeasure(text, FORCE, system)
}

/** A force to read: lbf to three figures, or kN to 0.01 (N under 10 N). */
export function formatForce(newtons: number, system: UnitSystem): string {
  if (!Number.isFinite(newtons)) return NOT_KNOWN
  if (system === 'us') return `${figures(newtons / POUND_FORCE, 3)} lbf`
  return Math.abs(newtons) >= 0.05 && Math.abs(newtons) < 9.95
    ? `${fixed(newtons, 1)} N`
    : `${fixed(newtons / 1_000, 2)} kN`
}
