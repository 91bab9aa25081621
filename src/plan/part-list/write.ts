import Papa from 'papaparse'
import { valueAt } from '../fault'
import type { Part } from '../types'
import { columnName, columnsOf, commonFields, type PartField, partFields } from './fields'

/** The text of a part list as JSON. */
export function writePartsJson(parts: readonly Part[]): string {
  return `${JSON.stringify({ format: 'fallroom-parts', version: 1, parts }, null, 2)}\n`
}

/** The library's own pattern misses a text of several lines. */
const FORMULA = /^[=+\-@\t\r]/

/**
 * The text of a part list as CSV: one part a line, figures in the SI unit of the column's head, empty where a kind has
 * no such field. Text that a spreadsheet would take for a formula gets an apostrophe before it, which reading removes.
 */
export function writePartsCsv(parts: readonly Part[]): string {
  const columns = columnsOf([...new Set(parts.map((p) => p.kind))])
  const rows = parts.map((part) => columns.map((field) => cell(part, field)))
  return `${Papa.unparse({ fields: columns.map(columnName), data: rows }, { escapeFormulae: FORMULA, newline: '\n' })}\n`
}

function cell(part: Part, field: PartField): string | number {
  const own = [...commonFields, ...partFields[part.kind]].some((f) => columnName(f) === columnName(field))
  const value = own ? valueAt(part, field.key.split('.')) : undefined
  return typeof value === 'number' || typeof value === 'string' ? value : ''
}
