/** Lengths in fields to the millimetre or the sixteenth: what was typed must read back as it was typed. */
import { formatFeetInches, type UnitSystem } from '../../plan/units'

export function exactLength(m: number, system: UnitSystem): string {
  if (system === 'us') return Math.abs(m) >= 60 ? `${trimmed(m / 0.3048, 3)} ft` : formatFeetInches(m, 16)
  return Math.abs(m) > 0 && Math.abs(m) < 0.1 ? `${trimmed(m * 1000, 1)} mm` : `${trimmed(m, 3)} m`
}

/** At most so many decimals, without zeros at the end but with two where metres stand. */
const trimmed = (value: number, decimals: number): string => String(Number(value.toFixed(decimals)))
