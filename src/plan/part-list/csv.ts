import Papa from 'papaparse'
import { type Fault, fault, type Path, shortened } from '../fault'
import { parseQuantity } from '../units/quantity'
import { columnName, columnsOf, commonFields, type PartField, partFields, partKinds } from './fields'

/** What a line of a list says before it is known to be a part. */
export interface RawPart {
  value: unknown
  path: Path
  line?: number
  faults: Fault[]
}

type Table = { ok: true; parts: RawPart[] } | { ok: false; faults: Fault[] }

/** The lines of a CSV table as parts still to be checked. The first line has the heads. */
export function rawPartsOfCsv(text: string): Table {
  const { data, errors } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), { skipEmptyLines: false })
  const quotes = errors.find((e) => e.type === 'Quotes')
  if (quotes) return refused(`a quoted text is not closed`, (quotes.row ?? 0) + 1)
  const heads = (data[0] ?? []).map((h) => h.trim())
  const faults = headFaults(heads)
  if (faults.length) return { ok: false, faults }
  const lines = lineNumbers(data)
  const parts = data.slice(1).flatMap((cells, i) => {
    const blank = cells.every((c) => c.trim() === '')
    return blank ? [] : [rawPart(heads, cells, i, lines[i + 1]!)]
  })
  return parts.length ? { ok: true, parts } : refused('the table has no parts', 1)
}

const refused = (why: string, line: number): Table => ({ ok: false, faults: [{ ...fault([], why), line }] })

/** Line of the text in which each row begins: a quoted cell may hold line ends. */
function lineNumbers(rows: string[][]): number[] {
  let line = 1
  return rows.map((cells) => {
    const here = line
    line += 1 + cells.reduce((n, c) => n + (c.match(/\r\n|\n|\r/g)?.length ?? 0), 0)
    return here
  })
}

const COLUMNS = new Map(columnsOf(partKinds).map((f) => [columnName(f).toLowerCase(), f]))
const KEYS = new Map(columnsOf(partKinds).map((f) => [f.key.toLowerCase(), f]))

/** The field of a head: with its unit, or without where the kinds agree on it. */
function fieldOf(head: string): PartField | undefined {
  return COLUMNS.get(head.toLowerCase()) ?? KEYS.get(head.toLowerCase())
}

function headFaults(heads: string[]): Fault[] {
  const at = (why: string): Fault => ({ ...fault([], why), line: 1 })
  const faults = heads.flatMap((head) => {
    if (head === '' || fieldOf(head)) return []
    const key = KEYS.get(head.replace(/\s*\(.*\)$/, '').toLowerCase())
    const wanted = key ? `the head of this column must be "${columnName(key)}"` : 'no part has such a field'
    return [at(`column "${shortened(head, 40)}": ${wanted}`)]
  })
  const double = heads.find((h, i) => h !== '' && heads.indexOf(h) !== i)
  if (double !== undefined) faults.push(at(`column "${shortened(double, 40)}" stands twice`))
  for (const f of commonFields) {
    if (!heads.some((h) => h.toLowerCase() === f.key)) faults.push(at(`there is no column "${f.key}"`))
  }
  return faults
}

function rawPart(heads: string[], cells: string[], row: number, line: number): RawPart {
  const path: Path = ['parts', row]
  const kind = (cells[heads.findIndex((h) => h.toLowerCase() === 'kind')] ?? '').trim()
  const fields = Object.hasOwn(partFields, kind) ? partFields[kind as keyof typeof partFields] : []
  const own = new Set([...commonFields, ...fields].map((f) => f.key))
  const part: RawPart = { value: {}, path, line, faults: [] }
  heads.forEach((head, i) => {
    const text = (cells[i] ?? '').trim()
    const field = text === '' || head === '' ? undefined : fieldOf(head)
    if (field) put(part, own.has(field.key) ? sameUnit(field, fields, head) : null, field, text, kind)
  })
  return part
}

/** A head with a unit belongs to a kind only where the kind gives the field in that unit. */
function sameUnit(field: PartField, fields: readonly PartField[], head: string): PartField | null {
  const mine = [...commonFields, ...fields].find((f) => f.key === field.key) ?? null
  return mine && head.includes('(') && mine.unit !== field.unit ? null : mine
}

function put(part: RawPart, mine: PartField | null, field: PartField, text: string, kind: string): void {
  const steps = field.key.split('.')
  const told = (why: string): void => {
    part.faults.push({
      ...fault([...part.path, ...steps], why),
      ...(part.line === undefined ? {} : { line: part.line }),
    })
  }
  if (!mine) {
    if (Object.hasOwn(partFields, kind))
      told(`a part of kind "${kind}" has no ${columnName(field)}: leave the cell empty`)
    return
  }
  const value = mine.unit === null ? plainText(text) : figure(text, mine.unit)
  if (typeof value === 'object') told(value.why)
  else setAt(part.value as Record<string, unknown>, steps, value)
}

/** Takes away the apostrophe that keeps a spreadsheet from computing a text. */
const plainText = (text: string): string => (/^'[=+\-@]/.test(text) ? text.slice(1) : text)

/** A figure in the column's SI unit, or with its own unit behind it: 64050 or 14,400 lbf. */
function figure(text: string, unit: string): number | { why: string } {
  if (/^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(text)) return Number(text)
  const bare = /^[\d.,+\- ]*$/.test(text)
  const read = bare ? null : parseQuantity(text, unit, 'si')
  if (read?.ok) return read.value
  return {
    why:
      read?.why ??
      `"${shortened(text, 30)}" is no number; write it plainly (64050), or with its unit (14,400 lbf)`,
  }
}

function setAt(root: Record<string, unknown>, steps: string[], value: unknown): void {
  const [first, second] = steps
  if (first === undefined) return
  if (second === undefined) root[first] = value
  else root[first] = { ...(root[first] as object | undefined), [second]: value }
}
