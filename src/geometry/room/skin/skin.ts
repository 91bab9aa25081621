/** The closed surface of a fall room, with what can be measured on it. */
import type { Vec3 } from '../../../plan/types'
import type { Room } from '../types'
import { lidAt, lowestPoint } from '../underside'
import type { Column, Weave } from './column'
import { refine } from './refine'
import { columnsOf, SHARE, weaveOf } from './weave'

/** The skin stands within this of the room, m. */
export const SKIN_TOLERANCE = 0.02

export interface Skin {
  line: string
  /** x, y, z of every vertex, m. */
  positions: Float32Array
  /** Triangles, counter-clockwise from outside; the underside comes first. */
  indices: Uint32Array
  /** How many of `indices` belong to the underside. */
  undersideCount: number
  /** Points of the lowest line along the room, first end to last. */
  spine: Vec3[]
  /** m3 and m2. */
  volume: number
  footprint: number
  lowest: Vec3 | null
}

/**
 * Builds the skin of a room; null where the room is empty. With `hasty` it does not follow jumps of the underside that run
 * across its rows, which takes most of the time: for a picture that lasts while a hand moves, never for a number.
 */
export function skinOf(room: Room, tolerance: number = SKIN_TOLERANCE, hasty = false): Skin | null {
  const weave = weaveOf(room, tolerance)
  if (!weave) return null
  const columns = columnsOf(weave, tolerance)
  const { positions, indices, undersideCount } = stitch(weave, columns, hasty ? null : tolerance)
  const low = lowestPoint(room)
  return {
    line: room.line,
    positions,
    indices,
    undersideCount,
    spine: columns.map((c) => lowestOf(weave, c)),
    volume: volumeOf(positions, indices),
    footprint: columns.slice(1).reduce((sum, c, i) => sum + areaBetween(columns[i]!, c), 0),
    lowest: low && [low.slice.x, low.slice.y, low.z],
  }
}

const areaBetween = (a: Column, b: Column): number => ((b.u - a.u) * (span(a) + span(b))) / 2
const span = (c: Column): number => c.v[c.v.length - 1]! - c.v[0]!

function place({ axes }: Weave, u: number, v: number, z: number): Vec3 {
  return [axes.ox + u * axes.ax - v * axes.ay, axes.oy + u * axes.ay + v * axes.ax, z]
}

function lowestOf(weave: Weave, c: Column): Vec3 {
  let row = 0
  for (let i = 1; i < c.z.length; i++) if (c.z[i]! < c.z[row]!) row = i
  return place(weave, c.u, c.v[row]!, c.z[row]!)
}

/**
 * Underside rows of a column are its vertices 0 ... n-1, then the lid's right and left edge. Every edge of the surface
 * is shared by two triangles that run it in opposite ways, also where a band has no width. Without a tolerance jumps across
 * the rows are left as the rows have them.
 */
function stitch(
  weave: Weave,
  columns: Column[],
  tolerance: number | null,
): Pick<Skin, 'positions' | 'indices' | 'undersideCount'> {
  const rows = columns[0]!.v.length
  const each = rows + 2
  const woven = new Array<number>(columns.length * each * 3)
  columns.forEach((c, i) => {
    for (let r = 0; r < rows; r++) put(woven, i * each + r, place(weave, c.u, c.v[r]!, c.z[r]!))
    for (const [k, v] of [c.v[0]!, c.v[rows - 1]!].entries()) {
      const p = place(weave, c.u, v, 0)
      put(woven, i * each + rows + k, [p[0], p[1], lidAt(weave.room, p[0], p[1])])
    }
  })
  const under: number[] = []
  const rest: number[] = []
  const [right, left] = [rows, rows + 1]
  for (let i = 0; i + 1 < columns.length; i++) {
    const a = i * each
    const b = a + each
    for (let r = 0; r + 1 < rows; r++) quad(under, a + r, a + r + 1, b + r + 1, b + r)
    quad(rest, a + right, b + right, b + left, a + left)
    quad(rest, a, b, b + right, a + right)
    quad(rest, a + left, b + left, b + rows - 1, a + rows - 1)
  }
  cap(rest, 0, rows, false)
  cap(rest, (columns.length - 1) * each, rows, true)
  const plain = { positions: woven, under }
  const fine = tolerance === null ? plain : refine(weave, plain, tolerance * SHARE)
  const indices = new Uint32Array(fine.under.length + rest.length)
  indices.set(fine.under)
  indices.set(rest, fine.under.length)
  return { positions: Float32Array.from(fine.positions), indices, undersideCount: fine.under.length }
}

function put(into: number[], corner: number, [x, y, z]: Vec3): void {
  into[corner * 3] = x
  into[corner * 3 + 1] = y
  into[corner * 3 + 2] = z
}

/** Two triangles of p q r s, in that order around. */
function quad(into: number[], p: number, q: number, r: number, s: number): void {
  into.push(p, q, r, p, r, s)
}

/** Closes an end: a fan over its rows from the lid's right edge. */
function cap(into: number[], base: number, rows: number, outwards: boolean): void {
  const ring = [...Array.from({ length: rows }, (_, r) => base + r), base + rows + 1]
  const hub = base + rows
  for (let i = 0; i + 1 < ring.length; i++) {
    const [a, b] = outwards ? [ring[i]!, ring[i + 1]!] : [ring[i + 1]!, ring[i]!]
    into.push(hub, a, b)
  }
}

/** Volume within a closed surface by the divergence theorem, m3, about its first vertex. */
export function volumeOf(positions: Float32Array, indices: Uint32Array): number {
  const [ox, oy, oz] = [positions[0]!, positions[1]!, positions[2]!]
  let six = 0
  for (let i = 0; i < indices.length; i += 3) {
    const [a, b, c] = [indices[i]! * 3, indices[i + 1]! * 3, indices[i + 2]! * 3]
    const [ax, ay, az] = [positions[a]! - ox, positions[a + 1]! - oy, positions[a + 2]! - oz]
    const [bx, by, bz] = [positions[b]! - ox, positions[b + 1]! - oy, positions[b + 2]! - oz]
    const [cx, cy, cz] = [positions[c]! - ox, positions[c + 1]! - oy, positions[c + 2]! - oz]
    six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)
  }
  return six / 6
}
