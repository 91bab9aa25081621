/** Part lists as files: JSON as it stands in a plan, or CSV with one part a line, figures in SI. */
import Papa from 'papaparse'
import { partSchema } from '../../plan/schema/parts'
import type { Part, PartKind } from '../../plan/types'
import { figureOf, partFigures, partKinds, withFigure } from './part-fields'

export interface PartListRead {
  parts: Part[]
  /** What was refused, one sentence each, with the line or place. */
  faults: string[]
}

const allKeys = [...new Set(partKinds.flatMap((kind) => partFigures[kind].map((f) => f.key)))]
const words = ['id', 'kind', 'name', 'source', 'construction', 'type'] as const

export const partsToJson = (parts: readonly Part[]): string => `${JSON.stringify(parts, null, 2)}\n`

export function partsToCsv(parts: readonly Part[]): string {
  const rows = parts.map((part) => {
    const record = part as unknown as Record<string, unknown>
    const texts = words.map((key) => [key, guarded(String(record[key] ?? ''))])
    return Object.fromEntries([...texts, ...allKeys.map((key) => [key, figureOf(part, key) ?? ''])])
  })
  return `${Papa.unparse({ fields: [...words, ...allKeys], data: rows })}\r\n`
}

/** A cell that a spreadsheet would take for a formula is made a text. */
const guarded = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text)

/** Reads a list in either form. What can't be read is told; the rest is kept. */
export function readPartList(text: string): PartListRead {
  const trimmed = text.trim()
  if (trimmed === '') return { parts: [], faults: ['The list is empty.'] }
  return trimmed.startsWith('[') || trimmed.startsWith('{') ? readJson(trimmed) : readCsv(trimmed)
}

function readJson(text: string): PartListRead {
  try {
    const json: unknown = JSON.parse(text)
    const list = Array.isArray(json) ? json : (json as { parts?: unknown })?.parts
    if (!Array.isArray(list)) return { parts: [], faults: ['There is no list of parts in the file.'] }
    return gathered(list.map((part, i) => [`Part ${i + 1}`, part]))
  } catch {
    return { parts: [], faults: ['The file is neither JSON nor a table.'] }
  }
}

function readCsv(text: string): PartListRead {
  const read = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true })
  if (!read.meta.fields?.includes('kind'))
    return { parts: [], faults: ['The table needs a head with id, kind, name, source and the figures.'] }
  return gathered(read.data.map((row, i) => [`Line ${i + 2}`, partOfRow(row)]))
}

function partOfRow(row: Record<string, string>): object {
  const figures = partFigures[row.kind as PartKind] ?? []
  let part: object = Object.fromEntries(
    words.flatMap((key) => (row[key] ? [[key, row[key].replace(/^'(?=[=+\-@])/, '')]] : [])),
  )
  for (const { key } of figures) {
    const cell = (row[key] ?? '').trim()
    if (cell !== '') part = withFigure(part, key, Number(cell.replace(',', '.')))
  }
  return part
}

function gathered(list: (readonly [string, unknown])[]): PartListRead {
  const parts: Part[] = []
  const faults: string[] = []
  for (const [where, item] of list.slice(0, 2000)) {
    const read = partSchema.safeParse(item)
    const why = read.success
      ? whyNoSource(read.data as Part)
      : `${read.error.issues[0]?.path.join('.') ?? ''} ${read.error.issues[0]?.message ?? ''}`
    if (read.success && why === null) parts.push(read.data as Part)
    else faults.push(`${where}: ${why}.`)
  }
  return { parts, faults }
}

/** A part without a source is refused: its figures would be nobody's. */
const whyNoSource = (part: Part): string | null =>
  part.source.trim() === '' ? 'the source of its figures is missing' : null
