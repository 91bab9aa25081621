import { FOOT, INCH } from './factors'
import { type Measure, parseMeasure } from './measure'
import { NUMBER, notParsed, type Parsed, parsed, tidied, type UnitSystem, unsigned } from './number'
import { fixed, NOT_KNOWN, upTo } from './text'

const LENGTH: Measure = {
  what: 'a length',
  units: {
    m: 1,
    metre: 1,
    metres: 1,
    meter: 1,
    meters: 1,
    mm: 0.001,
    cm: 0.01,
    km: 1_000,
    ft: FOOT,
    foot: FOOT,
    feet: FOOT,
    "'": FOOT,
    in: INCH,
    inch: INCH,
    inches: INCH,
    '"': INCH,
  },
  bare: { us: 'ft', si: 'm' },
  example: { us: '3 ft 6 1/2 in or 42"', si: '1.07 m or 1070 mm' },
}

const FEET_INCHES = new RegExp(
  `^([-+])? ?(\\d+) ?(?:'|ft\\.?|feet|foot) ?-? ?(${NUMBER}) ?(?:"|in\\.?|inch|inches)?$`,
)
const DASH = /^([-+])? ?(\d+)-(\d+(?:[ -]\d+ ?\/ ?\d+|\.\d+)?) ?(?:"|in\.?|inch|inches)?$/

/**
 * A length as people type it, in m: 42", 3'6", 3 ft 6 1/2 in, 3-6 1/2, 1.07 m, 1070 mm. A number without a unit is in
 * feet or metres by the system.
 */
export function parseLength(text: string, system: UnitSystem): Parsed {
  const t = tidied(text)
  const m = FEET_INCHES.exec(t) ?? (system === 'us' ? DASH.exec(t) : null)
  return m && t.length <= 60 ? feetAndInches(m) : parseMeasure(text, LENGTH, system)
}

function feetAndInches([, sign, feet, inches]: RegExpExecArray): Parsed {
  const rest = unsigned(inches!)
  if (rest === null) return notParsed('a fraction cannot have nothing below its bar')
  if (rest >= 12) return notParsed('the inches after the feet must be below 12')
  return parsed((sign === '-' ? -1 : 1) * (Number(feet) * FOOT + rest * INCH))
}

/** A length to read: ft-in to 1/8 in under 100 ft (1/16 under an inch), or m to 1 cm (to 0.1 mm under 0.1 m). */
export function formatLength(m: number, system: UnitSystem): string {
  if (!Number.isFinite(m)) return NOT_KNOWN
  return system === 'us' ? usLength(m) : siLength(m)
}

function siLength(m: number): string {
  const size = Math.abs(m)
  if (size < 0.00005 || size >= 0.09995) return `${fixed(m, 2)} m`
  return `${upTo(m * 1_000, 1)} mm`
}

function usLength(m: number): string {
  if (Math.abs(m) >= 100 * FOOT) return `${fixed(m / FOOT, 1)} ft`
  return formatFeetInches(m, Math.abs(m) < INCH ? 16 : 8)
}

/** A length in feet and inches to the nearest fraction of an inch: 3 ft 6 1/2 in. */
export function formatFeetInches(m: number, parts: number): string {
  const total = Math.round((Math.abs(m) / INCH) * parts)
  const sign = m < 0 && total > 0 ? '-' : ''
  const feet = Math.floor(total / (12 * parts))
  const inches = inchText(total - feet * 12 * parts, parts)
  if (feet === 0) return `${sign}${inches || '0'} in`
  return inches ? `${sign}${feet} ft ${inches} in` : `${sign}${feet} ft`
}

/** Parts of an inch as a mixed number in lowest terms; empty for none. */
function inchText(count: number, parts: number): string {
  const whole = Math.floor(count / parts)
  let above = count - whole * parts
  let below = parts
  while (above > 0 && above % 2 === 0) {
    above /= 2
    below /= 2
  }
  const fraction = above > 0 ? `${above}/${below}` : ''
  return [whole > 0 ? String(whole) : '', fraction].filter(Boolean).join(' ')
}

/** Whole millimetres, for papers that a tape is read by. */
export function formatMillimetres(m: number): string {
  return Number.isFinite(m) ? `${fixed(m * 1_000, 0)} mm` : NOT_KNOWN
}
