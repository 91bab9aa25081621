/**
 * Loop rows from a table: either rows given by first loop, spacing, count and offset, or one measured station a line, which is
 * then fitted by even rows where it is even.
 */
import Papa from 'papaparse'
import { formatLength, parseLength, parseNumber, type UnitSystem } from '../../plan/units'

export interface ReadRow {
  first: number
  spacing: number
  count: number
  offset: number
}

export interface LoopTable {
  rows: ReadRow[]
  /** What could not be taken, one sentence each with the line. */
  faults: string[]
  /** What was understood, for the preview. */
  told: string
}

/** Lines read of one table. */
const MOST = 5000

/** Stations of one row may differ from even by this, m: what a tape on concrete gives. */
const EVEN = 0.02

export function readLoopTable(text: string, system: UnitSystem): LoopTable {
  const { data } = Papa.parse<string[]>(text.trim(), {
    skipEmptyLines: 'greedy',
    delimitersToGuess: ['\t', ';', ',', '|'],
  })
  const lines = data.slice(0, MOST).map((cells) => cells.map((c) => c.trim()).filter((c) => c !== ''))
  const body = lines[0]?.every((c) => !/\d/.test(c)) ? lines.slice(1) : lines
  if (body.length === 0) return { rows: [], faults: [], told: '' }
  const read = (body[0]?.length ?? 0) >= 3 ? asRows(body, system) : asStations(withoutNumbers(body), system)
  if (data.length > MOST) read.faults.unshift(`${data.length} lines; only the first ${MOST} were read.`)
  return read
}

/** A first column that only counts the loops from 1 is not their stations: 1, 2, 3 beside stations that grow. */
function withoutNumbers(lines: string[][]): string[][] {
  const counts = lines.length > 1 && lines.every((c, i) => c.length === 2 && c[0] === String(i + 1))
  const along = lines.map((c) => Number.parseFloat(c[1] ?? ''))
  const grow = along.every((v, i) => i === 0 || v > (along[i - 1] ?? 0))
  return counts && grow ? lines.map((c) => c.slice(1)) : lines
}

function asRows(lines: string[][], system: UnitSystem): LoopTable {
  const faults: string[] = []
  const rows = lines.flatMap((cells, i): ReadRow[] => {
    const [first, spacing, count, offset] = [
      parseLength(cells[0] ?? '', system),
      parseLength(cells[1] ?? '', system),
      parseNumber(cells[2] ?? ''),
      cells[3] === undefined ? { ok: true as const, value: 0 } : parseLength(cells[3], system),
    ]
    for (const read of [first, spacing, count, offset]) {
      if (!read.ok) {
        faults.push(`Line ${i + 1}: ${read.why}.`)
        return []
      }
    }
    if (!first.ok || !spacing.ok || !count.ok || !offset.ok) return []
    if (
      spacing.value < 0.02 ||
      !Number.isInteger(count.value) ||
      count.value < 1 ||
      count.value > 5000 ||
      first.value < 0
    ) {
      faults.push(`Line ${i + 1}: first loop, spacing and number of loops do not make a row.`)
      return []
    }
    return [{ first: first.value, spacing: spacing.value, count: count.value, offset: offset.value }]
  })
  return {
    rows,
    faults,
    told: `${rows.length} ${rows.length === 1 ? 'row' : 'rows'}: first loop, spacing, number, left of the middle`,
  }
}

function asStations(lines: string[][], system: UnitSystem): LoopTable {
  const faults: string[] = []
  const byOffset = new Map<number, number[]>()
  lines.forEach((cells, i) => {
    const station = parseLength(cells[0] ?? '', system)
    const offset = cells[1] === undefined ? { ok: true as const, value: 0 } : parseLength(cells[1], system)
    if (station.ok && station.value < 0) faults.push(`Line ${i + 1}: a loop lies before the girder’s start.`)
    else if (!station.ok || !offset.ok)
      faults.push(`Line ${i + 1}: ${station.ok ? (offset.ok ? '' : offset.why) : station.why}.`)
    else byOffset.set(offset.value, [...(byOffset.get(offset.value) ?? []), station.value])
  })
  const rows = [...byOffset].flatMap(([offset, stations]) => fitted(stations, offset, faults, system))
  return {
    rows,
    faults,
    told: `${lines.length} measured stations, taken as ${rows.length} even ${rows.length === 1 ? 'row' : 'rows'}`,
  }
}

/** Runs of evenly spaced stations; a single one left over is told. */
function fitted(stations: number[], offset: number, faults: string[], system: UnitSystem): ReadRow[] {
  const sorted = [...new Set(stations)].sort((a, b) => a - b)
  const rows: ReadRow[] = []
  let at = 0
  while (at < sorted.length) {
    const end = runEnd(sorted, at)
    const first = sorted[at] ?? 0
    const last = sorted[end] ?? first
    if (end > at) rows.push({ first, spacing: (last - first) / (end - at), count: end - at + 1, offset })
    else faults.push(`The loop at ${formatLength(first, system)} stands alone and was left out.`)
    at = end + 1
  }
  return rows
}

/** Index of the last station that still lies on an even spacing from `at`. */
function runEnd(sorted: number[], at: number): number {
  const first = sorted[at] ?? 0
  let end = Math.min(at + 1, sorted.length - 1)
  while (end + 1 < sorted.length) {
    const spacing = ((sorted[end] ?? 0) - first) / (end - at)
    if (Math.abs((sorted[end + 1] ?? 0) - (first + spacing * (end + 1 - at))) > EVEN) break
    end++
  }
  return end
}
