/** Opens a plan for the headless verbs: every reason it cannot be used is a line of text with its place in the file. */
import { readText } from '../../electron/files/read-file'
import { MOST_TEXT } from '../plan/json'
import { checkable, type Fault, readPlan } from '../plan/read'
import type { Plan } from '../plan/types'

export type Tried<T> = { ok: true; value: T } | { ok: false; lines: string[] }

export const failed = (...lines: string[]): { ok: false; lines: string[] } => ({ ok: false, lines })

/** A fault as a person reads it: where, then what. */
export const faultLine = (f: Fault): string => `${f.line ? `line ${f.line}: ` : ''}${f.path}: ${f.message}`

/** Reads a plan that can be computed. `notes` tell what an older version needed. */
export async function openPlan(path: string): Promise<Tried<{ plan: Plan; notes: string[] }>> {
  const text = await readText(path, MOST_TEXT)
  if (!text.ok) return failed(text.why)
  const read = readPlan(text.value)
  if (!read.ok) return failed(...read.faults.map(faultLine))
  const lacks = checkable(read.plan)
  if (lacks.length > 0) return failed(...lacks.map(faultLine))
  return { ok: true, value: { plan: read.plan, notes: read.notes } }
}
