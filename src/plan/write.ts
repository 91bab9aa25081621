import { canonical } from './canonical'
import type { Plan } from './types'

/**
 * The plan as the text of its file: JSON that a person can read, short lists of numbers on one line, the fields in the
 * order they have, unknown ones too. Throws where a number is not finite: such a plan must never reach a disk.
 */
export function writePlan(plan: Plan): string {
  canonical(plan)
  return `${laidOut(plan, '')}\n`
}

const WIDTH = 100

function laidOut(value: unknown, indent: string): string {
  const flat = JSON.stringify(value)
  if (typeof value !== 'object' || value === null) return flat
  if (isShort(value) && flat.length <= WIDTH) return spaced(value)
  const deeper = `${indent}  `
  if (Array.isArray(value)) {
    return `[\n${value.map((v) => deeper + laidOut(v ?? null, deeper)).join(',\n')}\n${indent}]`
  }
  const fields = Object.entries(value).filter(([, v]) => v !== undefined)
  const lines = fields.map(([k, v]) => `${deeper}${JSON.stringify(k)}: ${laidOut(v, deeper)}`)
  return `{\n${lines.join(',\n')}\n${indent}}`
}

/** Holds no lists or objects itself. */
function isShort(value: object): boolean {
  return Object.values(value).every((v) => typeof v !== 'object' || v === null)
}

function spaced(value: object): string {
  if (Array.isArray(value)) return `[${value.map((v) => JSON.stringify(v ?? null)).join(', ')}]`
  const fields = Object.entries(value).filter(([, v]) => v !== undefined)
  if (fields.length === 0) return '{}'
  return `{ ${fields.map(([k, v]) => `${JSON.stringify(k)}: ${JSON.stringify(v)}`).join(', ')} }`
}
