/** One kind of measure: the names of its units, and what a bare number means in each system. */
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

export interface Measure {
  /** What it is, for messages: `a force`. */
  what: string
  /** SI value of one unit, by every way to write its name in lower case. */
  units: Record<string, number>
  /** Unit of a number without one. */
  bare: Record<UnitSystem, string>
  /** What can be written, for messages. */
  example: Record<UnitSystem, string>
}

const SHAPE = new RegExp(`^([-+])? ?(${NUMBER}) ?(.*)$`)

/** A number with or without its unit, in SI. */
export function parseMeasure(text: string, measure: Measure, system: UnitSystem): Parsed {
  const t = tidied(text)
  const like = `for example ${measure.example[system]}`
  if (t === '') return notParsed(`type ${measure.what}, ${like}`)
  if (tooLong(text)) return notParsed(`this is too long for ${measure.what}`)
  const m = SHAPE.exec(t)
  const value = m ? unsigned(m[2]!) : null
  if (!m || value === null || /^[,./]?\d/.test(m[3]!)) return notNumber(text)
  const name = m[3]!.replace(/\.$/, '') || measure.bare[system]
  const unit = Object.hasOwn(measure.units, name) ? measure.units[name] : undefined
  if (unit === undefined) return notParsed(`"${name.slice(0, 20)}" is no unit of ${measure.what}; ${like}`)
  return parsed((m[1] === '-' ? -value : value) * unit)
}
