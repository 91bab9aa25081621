/**
 * The skin is built of columns: lines across the girder at places u along it. A column's rows lie between the edges of
 * the corners' footprints, for only there the underside jumps; an edge carries two rows, one for either side of the jump.
 */
import type { Room } from '../types'
import { lidAt, underside } from '../underside'
import { type PlanAxes, type Sheet, sheetInterval } from './bounds'

export interface Column {
  u: number
  /** Rows from right to left. */
  v: Float64Array
  z: Float64Array
}

/** What all columns of one skin share. */
export interface Weave {
  room: Room
  axes: PlanAxes
  sheets: Sheet[]
  low: number
  high: number
  /** Number of intervals between rows in each band between two edges. */
  parts: number[]
}

/** Edges of all footprints at u in order; two for each sheet. Where a sheet is not, its edges fall together. */
export function edgesAt(weave: Omit<Weave, 'parts'>, u: number): number[] {
  const found = weave.sheets.map((s) => sheetInterval(s, weave.room.side, u))
  const known = found.filter((f): f is [number, number] => f !== null)
  if (known.length === 0) return found.flatMap(() => [0, 0])
  const low = Math.min(...known.map((f) => f[0]))
  const high = Math.max(...known.map((f) => f[1]))
  const middle = (low + high) / 2
  return found.flatMap((f) => f ?? [middle, middle]).sort((a, b) => a - b)
}

/** Elevation of the underside at (u, v), never above the girder's top; the top itself outside the room. */
export function depthAt(weave: Omit<Weave, 'parts'>, u: number, v: number): number {
  const { ox, oy, ax, ay } = weave.axes
  const x = ox + u * ax - v * ay
  const y = oy + u * ay + v * ax
  const lid = lidAt(weave.room, x, y)
  const found = underside(weave.room, x, y)
  return found ? Math.min(found.z, lid) : lid
}

/** m; see missesBetween. */
const CLOSE = 0.04

/** Rows beside an edge take their height this far inside it, m: there the swings that end at the edge count in full. */
const INSIDE = 0.004

/** The column at u. */
export function columnAt(weave: Weave, u: number): Column {
  const edges = edgesAt(weave, u)
  const inner = Math.min(Math.max(u, weave.low + INSIDE), weave.high - INSIDE)
  const v: number[] = []
  const z: number[] = []
  for (let band = 0; band < weave.parts.length; band++) {
    const from = edges[band]!
    const to = edges[band + 1]!
    const parts = weave.parts[band]!
    for (let i = 0; i <= parts; i++) {
      v.push(from + (to - from) * rowShare(i, parts))
      z.push(depthAt(weave, inner, rowPlace(from, to, rowShare(i, parts))))
    }
  }
  return { u, v: Float64Array.from(v), z: Float64Array.from(z) }
}

/** Share of a band's width at which row i of `parts` stands: closer at the edges, where the underside turns fastest. */
export const rowShare = (i: number, parts: number): number => (1 - Math.cos((Math.PI * i) / parts)) / 2

/** Where a row takes its height: a little inside its band. */
export function rowPlace(from: number, to: number, share: number): number {
  const inside = Math.min(INSIDE, (to - from) / 4)
  return Math.min(to - inside, Math.max(from + inside, from + (to - from) * share))
}

/**
 * Whether the surface half-way between two columns leaves the room's own by more than `near`, m, at the one in the
 * middle: sideways for edges; for heights only where the underside takes no such value within `near` around either, for
 * at a steep place a small step sideways is a large one in height.
 */
export function misses(weave: Weave, a: Column, mid: Column, b: Column, near: number): boolean {
  for (let i = 0; i < mid.v.length; i++) {
    if (Math.abs(mid.v[i]! - (a.v[i]! + b.v[i]!) / 2) > near) return true
    const z = (a.z[i]! + b.z[i]!) / 2
    if (Math.abs(mid.z[i]! - z) > near && !takesNear(weave, mid.u, mid.v[i]!, z, near)) return true
  }
  return false
}

/**
 * The same half-way between rows. More columns cannot make up for too few rows: columns nearer than `CLOSE` are not asked
 * for on its account.
 */
export function missesBetween(weave: Weave, a: Column, mid: Column, b: Column, near: number): boolean {
  if (b.u - a.u < CLOSE) return false
  for (let i = 0; i + 1 < mid.v.length; i++) {
    if (mid.v[i + 1]! - mid.v[i]! <= near) continue
    const v = (mid.v[i]! + mid.v[i + 1]!) / 2
    const z = (a.z[i]! + b.z[i + 1]!) / 2
    if (Math.abs(depthAt(weave, mid.u, v) - z) > near && !takesNear(weave, mid.u, v, z, near)) return true
  }
  return false
}

/** Whether the underside takes the height z, within `near`, at a place within `near` of (u, v). */
export function takesNear(
  weave: Omit<Weave, 'parts'>,
  u: number,
  v: number,
  z: number,
  near: number,
): boolean {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (let i = 0; i <= 8; i++) {
    const angle = (i * Math.PI) / 4
    const far = i === 8 ? 0 : near
    const at = depthAt(weave, u + far * Math.cos(angle), v + far * Math.sin(angle))
    low = Math.min(low, at)
    high = Math.max(high, at)
  }
  return z >= low - near && z <= high + near
}
