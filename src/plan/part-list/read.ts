/** Part lists from others, as JSON or CSV: every fault comes with the line it stands in. */
import { type Fault, fault } from '../fault'
import { readJson } from '../json'
import { withLines } from '../lines'
import { asObject } from '../references/view'
import { partSchema } from '../schema/parts'
import type { Part } from '../types'
import { schemaFaults } from '../words'
import { type RawPart, rawPartsOfCsv } from './csv'

export type PartsRead = { ok: true; parts: Part[] } | { ok: false; faults: Fault[] }

/** The parts of a list that have no fault, the first of each id, and the faults of the others. */
export interface PartsTaken {
  parts: Part[]
  faults: Fault[]
}

const MOST_LIST = 5_000_000

/** Reads a part list in either form, whole or not at all; JSON begins with a bracket or a brace. Also takes the parts out of a plan. */
export function readParts(text: string): PartsRead {
  const { parts, faults } = takeParts(text)
  return faults.length ? { ok: false, faults } : { ok: true, parts }
}

/** Reads what can be read of a list in either form. */
export function takeParts(text: string): PartsTaken {
  return /^\uFEFF?\s*[[{]/.test(text) ? takeJson(text) : takeCsv(text)
}

const none = (...faults: Fault[]): PartsTaken => ({ parts: [], faults })

/** A list of parts, alone or in a document's `parts`. */
function takeJson(text: string): PartsTaken {
  const json = readJson(text, MOST_LIST)
  if (!json.ok) return none(...json.faults)
  const base = Array.isArray(json.value) ? [] : ['parts']
  const list = Array.isArray(json.value) ? json.value : asObject(json.value).parts
  if (!Array.isArray(list)) return none(fault(base, 'a list of parts is wanted here'))
  const raw = list.map((value, i) => ({ value, path: [...base, i], faults: [] }))
  const { parts, faults } = checked(raw, json.value)
  return { parts, faults: withLines(faults, text) }
}

/** A table with one part a line; see `writePartsCsv` for its heads. */
export function readPartsCsv(text: string): PartsRead {
  const { parts, faults } = takeCsv(text)
  return faults.length ? { ok: false, faults } : { ok: true, parts }
}

function takeCsv(text: string): PartsTaken {
  if (text.length > MOST_LIST) return none(fault([], 'the list is too large'))
  const table = rawPartsOfCsv(text)
  return table.ok ? checked(table.parts, null) : none(...table.faults)
}

function checked(raw: RawPart[], root: unknown): PartsTaken {
  const faults: Fault[] = []
  const parts: Part[] = []
  for (const entry of raw) {
    const read = partSchema.safeParse(entry.value)
    const shape = read.success ? [] : schemaFaults(read.error, root ?? atPath(entry), entry.path)
    const known = new Set(entry.faults.map((f) => f.path))
    faults.push(
      ...entry.faults,
      ...shape.filter((f) => !known.has(f.path)).map((f) => withLine(f, entry.line)),
    )
    const part = read.success && entry.faults.length === 0 ? (entry.value as Part) : null
    if (part && !parts.some((p) => p.id === part.id)) parts.push(part)
  }
  faults.push(...doubles(raw))
  return { parts, faults }
}

/** A root under which the entry's path leads to its value. */
function atPath({ path, value }: RawPart): unknown {
  return path.reduceRight<unknown>((inner, step) => ({ [step]: inner }), value)
}

function withLine(f: Fault, line: number | undefined): Fault {
  return line === undefined ? f : { ...f, line }
}

function doubles(raw: RawPart[]): Fault[] {
  const seen = new Set<unknown>()
  const faults: Fault[] = []
  for (const entry of raw) {
    const id = asObject(entry.value).id
    if (typeof id !== 'string' || id === '') continue
    if (seen.has(id))
      faults.push(withLine(fault([...entry.path, 'id'], `the id "${id}" stands twice`), entry.line))
    seen.add(id)
  }
  return faults
}
