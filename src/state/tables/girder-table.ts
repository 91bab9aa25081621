/** Girders as lines of text, typed or pasted from a table: name, start x y elevation, end x y elevation. */
import Papa from 'papaparse'
import type { Vec3 } from '../../plan/types'
import { parseLength, type UnitSystem } from '../../plan/units'

export type GirderRow =
  | { ok: true; name: string; start: Vec3; end: Vec3 }
  | { ok: false; line: number; why: string }

const columns = ['start x', 'start y', 'start elevation', 'end x', 'end y', 'end elevation']

/** One result a line that is not empty; a head line in words is passed over. */
export function readGirderTable(text: string, system: UnitSystem): GirderRow[] {
  const { data } = Papa.parse<string[]>(text.trim(), {
    skipEmptyLines: 'greedy',
    delimitersToGuess: ['\t', ';', ',', '|'],
  })
  const rows = data.slice(0, 200).map((cells, i) =>
    readRow(
      cells.map((c) => c.trim()),
      i + 1,
      system,
    ),
  )
  return rows[0] && !rows[0].ok && looksLikeHead(data[0] ?? []) ? rows.slice(1) : rows
}

/** No cell of a head carries a digit. */
const looksLikeHead = (cells: string[]): boolean => cells.length > 1 && cells.every((c) => !/\d/.test(c))

function readRow(cells: string[], line: number, system: UnitSystem): GirderRow {
  const named = cells.length === 7
  const figures = named ? cells.slice(1) : cells
  if (figures.length !== 6)
    return { ok: false, line, why: `${cells.length} values; wanted are a name and ${columns.join(', ')}` }
  const values: number[] = []
  for (const [i, cell] of figures.entries()) {
    const read = parseLength(cell, system)
    if (!read.ok) return { ok: false, line, why: `${columns[i]}: ${read.why}` }
    values.push(read.value)
  }
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = values
  if (Math.hypot(d - a, e - b) < 0.5) return { ok: false, line, why: 'start and end are in the same place' }
  return { ok: true, name: named ? (cells[0] ?? '') : '', start: [a, b, c], end: [d, e, f] }
}
