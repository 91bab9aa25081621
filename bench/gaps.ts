/**
 * Gaps: what is new after one stanchion has moved, against models of more and more triangles, more and more lines and
 * spans; the whole site is 20 girders, 12 lines, 59 boxes and a model of a million triangles. Building a model's index
 * and asking it are measured apart. Each row after the first of its kind says how the cost grows.
 */
import {
  gapsOfLine,
  gapsOfPlan,
  type MeshTarget,
  meshTarget,
  modelIndex,
  type ReadModel,
  targetsOf,
} from '../src/geometry/gaps'
import { type Room, roomSizes, skinOf } from '../src/geometry/room'
import type { MeshObstacle, Obstacle, Plan } from '../src/plan/types'
import { testGirder, testRoom } from '../tests/unit/room/rooms'
import { boxes, terrain } from './ground'
import { size, type Timed, timed } from './harness'

const mesh: MeshObstacle = { id: 'M', name: 'ground', kind: 'mesh', file: 'ground.glb' }

const read = (n: number): ReadModel => ({ ok: true, value: { triangles: terrain(n) } })

/** About ten thousand, a hundred thousand and a million triangles. */
const SIZES = size([71, 224, 707], [71])
const models = SIZES.map(read)

const posts = (spans: number): number[] => Array.from({ length: spans + 1 }, (_, i) => 2 + (36 * i) / spans)
const girder = testGirder('G', [0, 0, 18], [40, 0, 18])

/** Rooms of one line, each with its second stanchion somewhat farther along: none was measured before. */
function moved(count: number, spans = 4, of = girder): () => Room {
  const rooms = Array.from({ length: count }, (_, k) => {
    const at = posts(spans)
    at[1] = at[1]! + 0.05 * k
    return testRoom(of, at)
  })
  let next = 0
  return () => rooms[next++ % rooms.length]!
}

/** How the cost grows from the first row on, against how much more there is of what it is measured against. */
function grown(rows: Timed[], counts: number[]): Timed[] {
  return rows.map((row, i) => {
    if (i === 0) return row
    const cost = (row.median / rows[0]!.median).toFixed(2)
    const note = `${cost} times the first for ${(counts[i]! / counts[0]!).toFixed(0)} times as many`
    return { ...row, note: row.note ? `${row.note}; ${note}` : note }
  })
}

const count = (n: number): string => (2 * n * n).toLocaleString('en')

/** The index of a model; then the plain gap and the least distance in any direction, after a stanchion has moved. */
function againstModels(): Timed[] {
  const triangles = SIZES.map((n) => 2 * n * n)
  const index = SIZES.map((n) =>
    timed(`index of ${count(n)} triangles, built once`, () => [modelIndex(terrain(n)).triangles], 1, 1),
  )
  const targets = models.map((model) => {
    const target = meshTarget(mesh, model)
    if (!target.ok) throw new Error(target.why)
    return target
  })
  const vertical = targets.map((target, i) => {
    const room = moved(9)
    const gap = (): number[] => [target.measure(room()).point?.gap ?? 0]
    return timed(`gap of one line to ${count(SIZES[i]!)} triangles, a stanchion moved`, gap, 7, 2)
  })
  const any = targets.map((target, i) => {
    const room = moved(9)
    const distance = (): number[] => [target.nearest(room(), null)?.distance ?? 0]
    return timed(`the same in any direction, ${count(SIZES[i]!)} triangles`, distance, 7, 2)
  })
  return [index, vertical, any].flatMap((rows) => grown(rows, triangles))
}

/** How the cost of one line grows with its spans: gaps to 60 boxes and a million triangles. */
function bySpans(): Timed[] {
  const counts = size([2, 4, 8], [2])
  const targets = targetsOf(site([...boxes().slice(0, 59), mesh]), placed())
  const rows = counts.map((spans) => {
    const room = moved(5, spans)
    const gaps = (): number[] => gapsOfLine(room(), targets).map((m) => m?.point?.gap ?? 0)
    return timed(`gaps of a line of ${spans} spans to 60 obstacles, a stanchion moved`, gaps, 3, 2)
  })
  return grown(rows, counts)
}

const girders = Array.from({ length: 20 }, (_, i) => testGirder(`G${i}`, [0, 3 * i, 18], [40, 3 * i, 18]))

const site = (obstacles: Obstacle[]): Plan =>
  ({ girders, obstacles, lines: [], decks: [] }) as unknown as Plan

const placed = (): Map<string, MeshTarget> => new Map([['M', meshTarget(mesh, models.at(-1)!)]])

/** The whole site with 1, 4 and 12 lines on its first girders. */
function byLines(): Timed[] {
  const counts = size([1, 4, 12], [2])
  const plan = site([...boxes().slice(0, 59), mesh])
  const models = placed()
  const sum = (gaps: { gap: number | null; nearest: number | null }[]): number[] =>
    gaps.flatMap((g) => [g.gap ?? 0, g.nearest ?? 0])
  const rows = counts.map((lines) => {
    const rooms = girders.slice(0, lines).map((g) => testRoom(g, posts(4)))
    const next = moved(5, 4, girders[0])
    const after = (): Room[] => [next(), ...rooms.slice(1)]
    const what = `${lines} ${lines === 1 ? 'line' : 'lines'}, 20 girders, 60 obstacles`
    return [
      timed(`${what}: all gaps for the first time`, () => sum(gapsOfPlan(plan, rooms, models)), 1, 0),
      timed(`${what}: a stanchion moved`, () => sum(gapsOfPlan(plan, after(), models)), 3, 2),
      timed(`${what}: any direction, at rest`, () => sum(gapsOfPlan(plan, rooms, models, true)), 1, 0),
    ]
  })
  return [0, 1, 2].flatMap((k) =>
    grown(
      rows.map((r) => r[k]!),
      counts,
    ),
  )
}

/** The room itself, its surface and its sizes. */
function ofRooms(): Timed[] {
  const built = size([2, 4, 8], [2]).map((spans) =>
    timed(`room of ${spans} spans`, () => [testRoom(girder, posts(spans)).slices.length], 5, 2),
  )
  const surfaces = size([2, 4], []).flatMap((spans) => {
    const own = testRoom(girder, posts(spans))
    const picture = (): number[] => [skinOf(own, 0.06)?.volume ?? 0]
    return [
      timed(`surface of ${spans} spans for the picture (60 mm)`, picture, 2, 1),
      timed(`surface of ${spans} spans for a file (20 mm)`, () => [skinOf(own)?.volume ?? 0], 1, 0),
    ]
  })
  const sizes = (): number[] => [roomSizes([testRoom(girder, posts(4))]).union.volume]
  return [...built, ...surfaces, timed('volume and footprint of a room of 4 spans', sizes, 2, 1)]
}

export function bench(): Timed[] {
  return [...againstModels(), ...bySpans(), ...byLines(), ...ofRooms()]
}
