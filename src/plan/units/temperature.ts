import {
  NUMBER,
  notNumber,
  notParsed,
  type Parsed,
  parsed,
  tidied,
  tooLong,
  type UnitSystem,
  unsigned,
} from './number'
import { NOT_KNOWN, upTo } from './text'

const SHAPE = new RegExp(`^([-+])? ?(${NUMBER}) ?(?:°|deg\\.?|degrees?)? ?(f|c|fahrenheit|celsius)?$`)
const ABSOLUTE_ZERO = -273.15

/** A temperature as people type it, in degC: 59 F, 15 C, 59 °F. A bare number is in F or C by the system. */
export function parseTemperature(text: string, system: UnitSystem): Parsed {
  const t = tidied(text)
  if (t === '') return notParsed(`type a temperature, for example ${system === 'us' ? '59 F' : '15 C'}`)
  const m = tooLong(text) ? null : SHAPE.exec(t)
  const size = m ? unsigned(m[2]!) : null
  if (!m || size === null) return notNumber(text)
  const value = m[1] === '-' ? -size : size
  const fahrenheit = m[3] ? m[3].startsWith('f') : system === 'us'
  const celsius = fahrenheit ? ((value - 32) * 5) / 9 : value
  return celsius < ABSOLUTE_ZERO ? notParsed('nothing is as cold as that') : parsed(celsius)
}

/** A temperature to read, to a tenth of a degree at most. */
export function formatTemperature(celsius: number, system: UnitSystem): string {
  if (!Number.isFinite(celsius)) return NOT_KNOWN
  return system === 'us' ? `${upTo((celsius * 9) / 5 + 32, 1)} °F` : `${upTo(celsius, 1)} °C`
}
