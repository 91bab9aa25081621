/** Points as lines of text, typed or pasted from a table: x, y for an outline; x, y and an elevation for a path. */
import Papa from 'papaparse'
import { parseLength, type UnitSystem } from '../../plan/units'

export interface PointTable {
  points: number[][]
  /** What could not be read, one sentence a line; nothing is taken while there is one. */
  faults: string[]
}

const columns = ['x', 'y', 'elevation']

/** Reads at most 500 points. Each line must give `least` to `most` values; a head line in words is passed over. */
export function readPoints(text: string, system: UnitSystem, least: number, most: number): PointTable {
  const { data } = Papa.parse<string[]>(text.trim(), {
    skipEmptyLines: 'greedy',
    delimitersToGuess: ['\t', ';', ',', '|'],
  })
  const table: PointTable = { points: [], faults: [] }
  if (data.length > 500) table.faults.push(`${data.length} points; at most 500 are taken`)
  for (const [i, cells] of data.slice(0, 500).entries()) {
    if (i === 0 && cells.length > 1 && cells.every((c) => !/\d/.test(c))) continue
    const read = readPoint(cells, system, least, most)
    if (typeof read === 'string') table.faults.push(`Line ${i + 1}: ${read}`)
    else table.points.push(read)
  }
  return table
}

function readPoint(cells: string[], system: UnitSystem, least: number, most: number): number[] | string {
  if (cells.length < least || cells.length > most)
    return `${cells.length} values; wanted are ${columns.slice(0, most).join(', ')}`
  const values: number[] = []
  for (const [i, cell] of cells.entries()) {
    const read = parseLength(cell.trim(), system)
    if (!read.ok) return `${columns[i]}: ${read.why}`
    values.push(read.value)
  }
  return values
}

type Point = readonly [number, number]

/** Why a closed outline is none; null where it is one: at least three corners, some area, no side across another. */
export function outlineFault(outline: readonly Point[]): string | null {
  if (outline.length < 3) return 'A deck needs three corners.'
  const side = (i: number): [Point, Point] => [
    outline[i % outline.length] as Point,
    outline[(i + 1) % outline.length] as Point,
  ]
  for (let i = 0; i < outline.length; i++) {
    for (let j = i + 2; j < outline.length; j++) {
      if (i === 0 && j === outline.length - 1) continue
      if (cross(...side(i), ...side(j))) return `Side ${i + 1} runs across side ${j + 1}.`
    }
  }
  return areaOf(outline) < 1e-3 ? 'The outline encloses no area.' : null
}

/** Area inside a closed outline, m2. */
export function areaOf(outline: readonly Point[]): number {
  const twice = outline.reduce((sum, [x, y], i) => {
    const [nx, ny] = outline[(i + 1) % outline.length] as Point
    return sum + x * ny - nx * y
  }, 0)
  return Math.abs(twice) / 2
}

/** Whether two segments meet: each has the other's ends on different sides, or one end on it. */
function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  const turn = (p: Point, q: Point, r: Point): number =>
    Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]))
  return turn(a, b, c) !== turn(a, b, d) && turn(c, d, a) !== turn(c, d, b)
}
