/** One door for every unit that a finding or a field of the plan has. */
import { formatAngle, parseAngle } from './angle'
import { EXPANSION, LINEAR_MASS, MOMENT, SHARE, STIFFNESS, STRESS, TIME } from './derived'
import { FOOT, INCH, POUND, POUND_FORCE, PSI } from './factors'
import { formatForce, parseForce } from './force'
import { formatLength, parseLength } from './length'
import { formatMass, parseMass } from './mass'
import { type Measure, parseMeasure } from './measure'
import { notParsed, type Parsed, parseNumber, type UnitSystem } from './number'
import { formatTemperature, parseTemperature } from './temperature'
import { figures, fixed, NOT_KNOWN, upTo } from './text'

interface Unit {
  format(value: number, system: UnitSystem): string
  parse(text: string, system: UnitSystem): Parsed
}

const measured = (measure: Measure, us: [number, string], si: [number, string]): Unit => ({
  format: (value, system) => {
    const [unit, name] = system === 'us' ? us : si
    return `${figures(value / unit, 3)} ${name}`
  },
  parse: (text, system) => parseMeasure(text, measure, system),
})

const plain = (format: (value: number) => string): Unit => ({ format, parse: parseNumber })

const count: Unit = {
  format: (value) => upTo(value, 2),
  parse: (text) => {
    const read = parseNumber(text)
    return read.ok && !Number.isInteger(read.value) ? notParsed('type a whole number') : read
  },
}

const UNITS: Record<string, Unit> = {
  m: { format: formatLength, parse: parseLength },
  N: { format: formatForce, parse: parseForce },
  kg: { format: formatMass, parse: parseMass },
  deg: { format: formatAngle, parse: parseAngle },
  degC: { format: formatTemperature, parse: parseTemperature },
  s: { ...measured(TIME, [1, 's'], [1, 's']), format: (value) => `${fixed(value, 2)} s` },
  ratio: plain((value) => fixed(value, 2)),
  count,
  fraction: { ...measured(SHARE, [1, ''], [1, '']), format: (value) => `${upTo(value * 100, 2)} %` },
  'N m': measured(MOMENT, [POUND_FORCE * FOOT, 'lbf ft'], [1_000, 'kN m']),
  'N/m': measured(STIFFNESS, [POUND_FORCE / INCH, 'lbf/in'], [1_000, 'kN/m']),
  J: measured(MOMENT, [POUND_FORCE * FOOT, 'ft lbf'], [1_000, 'kJ']),
  Pa: measured(STRESS, [1_000 * PSI, 'ksi'], [1e6, 'MPa']),
  'kg/m': measured(LINEAR_MASS, [POUND / FOOT, 'lb/ft'], [1, 'kg/m']),
  '1/degC': measured(EXPANSION, [1.8, '/°F'], [1, '/°C']),
  '': plain((value) => figures(value, 4)),
}

/** Names of the units that `formatQuantity` and `parseQuantity` know. */
export const unitNames: readonly string[] = Object.keys(UNITS)

function unitOf(unit: string): Unit {
  return (Object.hasOwn(UNITS, unit) ? UNITS[unit] : undefined) ?? UNITS['']!
}

/** A value in SI as a person reads it, with its unit; what could not be computed reads "not known". */
export function formatQuantity(value: number | null, unit: string, system: UnitSystem): string {
  if (value === null || !Number.isFinite(value)) return NOT_KNOWN
  return unitOf(unit).format(value, system)
}

/** Both systems side by side, as papers need them; one where they read the same. */
export function formatBoth(value: number | null, unit: string, first: UnitSystem): string {
  const one = formatQuantity(value, unit, first)
  const other = formatQuantity(value, unit, first === 'us' ? 'si' : 'us')
  return one === other ? one : `${one} (${other})`
}

/** A value as a person types it, in SI. */
export function parseQuantity(text: string, unit: string, system: UnitSystem): Parsed {
  return unitOf(unit).parse(text, system)
}
