/** Which columns and rows a skin needs so that it lies within a tolerance of the room. */
import type { Room } from '../types'
import { axesOf, type Sheet, sheetInterval, sheetsOf } from './bounds'
import {
  type Column,
  columnAt,
  depthAt,
  edgesAt,
  misses,
  missesBetween,
  rowPlace,
  rowShare,
  takesNear,
  type Weave,
} from './column'

/** Columns stand at most this far apart, and not nearer than the second where something jumps, m. */
const WIDEST = 0.8
const NEAREST = 0.006
const MOST_PARTS = 24
/** Of the tolerance, what is used up where the surface is tried: it is tried at points, and must hold between them. */
export const SHARE = 0.35

/** The weave of a room for a skin within `tolerance` of it, m; null for a room without swings. */
export function weaveOf(room: Room, tolerance: number): Weave | null {
  const all = sheetsOf(room)
  if (all.length === 0) return null
  const low = Math.min(...all.map((s) => s.low))
  const high = Math.max(...all.map((s) => s.high))
  const places = placesOf(low, high)
  const sheets = distinct(all, room.side, places, tolerance * SHARE)
  const weave = { room, axes: axesOf(room), sheets, low, high }
  return { ...weave, parts: partsOf(weave, places, tolerance * SHARE) }
}

/** Places along the room at which its shape is tried: even ones, and closer ones at the ends. */
function placesOf(low: number, high: number): number[] {
  const even = Array.from({ length: 25 }, (_, i) => low + ((high - low) * (i + 0.5)) / 25)
  const close = Array.from({ length: 14 }, (_, i) => 0.15 * (i + 0.5))
  return [...close.map((c) => low + c), ...even, ...close.map((c) => high - c)].filter(
    (u) => u > low && u < high,
  )
}

/** Sheets whose edges run within `near` of a wider one's everywhere share its edges. */
function distinct(sheets: Sheet[], side: number, places: number[], near: number): Sheet[] {
  const kept: { sheet: Sheet; edges: ([number, number] | null)[] }[] = []
  const wide = (s: Sheet): number =>
    places.reduce((sum, u) => sum + width(sheetInterval(s, side, u)), s.high - s.low)
  for (const sheet of [...sheets].sort((a, b) => wide(b) - wide(a))) {
    const edges = places.map((u) => sheetInterval(sheet, side, u))
    const same = kept.some(
      (k) =>
        Math.abs(k.sheet.low - sheet.low) < near &&
        Math.abs(k.sheet.high - sheet.high) < near &&
        edges.every((e, i) => alike(e, k.edges[i]!, near)),
    )
    if (!same) kept.push({ sheet, edges })
  }
  return kept.map((k) => k.sheet)
}

const width = (e: [number, number] | null): number => (e ? e[1] - e[0] : 0)

function alike(a: [number, number] | null, b: [number, number] | null, near: number): boolean {
  if (!a || !b) return a === b
  return Math.abs(a[0] - b[0]) < near && Math.abs(a[1] - b[1]) < near
}

/** Rows in each band: as many as keep straight pieces within `near` of the underside at every place tried. */
function partsOf(weave: Omit<Weave, 'parts'>, places: number[], near: number): number[] {
  const bands = weave.sheets.length * 2 - 1
  const parts = new Array<number>(bands).fill(1)
  for (const u of places) {
    const edges = edgesAt(weave, u)
    for (let band = 0; band < bands; band++) {
      const [from, to] = [edges[band]!, edges[band + 1]!]
      while (
        to - from > near &&
        parts[band]! < MOST_PARTS &&
        leaves(weave, u, from, to, parts[band]!, near)
      ) {
        parts[band] = Math.min(MOST_PARTS, Math.ceil(parts[band]! * 1.2))
      }
    }
  }
  return parts
}

function leaves(
  weave: Omit<Weave, 'parts'>,
  u: number,
  from: number,
  to: number,
  parts: number,
  near: number,
): boolean {
  const at = (share: number): number => depthAt(weave, u, rowPlace(from, to, share))
  for (let i = 0; i < parts; i++) {
    const [a, b] = [rowShare(i, parts), rowShare(i + 1, parts)]
    const straight = (at(a) + at(b)) / 2
    const middle = (a + b) / 2
    if (Math.abs(at(middle) - straight) <= near) continue
    if (!takesNear(weave, u, from + (to - from) * middle, straight, near)) return true
  }
  return false
}

/** The columns: halved where the one in the middle is missed by more than half the tolerance. */
export function columnsOf(weave: Weave, tolerance: number): Column[] {
  const start = columnAt(weave, weave.low)
  const count = Math.max(2, Math.ceil((weave.high - weave.low) / WIDEST))
  const columns = [start]
  let last = start
  for (let i = 1; i <= count; i++) {
    const next = columnAt(weave, weave.low + ((weave.high - weave.low) * i) / count)
    halve(weave, tolerance * SHARE, last, next, columns)
    columns.push(next)
    last = next
  }
  return columns
}

function halve(weave: Weave, near: number, a: Column, b: Column, into: Column[]): void {
  if (b.u - a.u <= NEAREST) return
  const mid = columnAt(weave, (a.u + b.u) / 2)
  const fine = !misses(weave, a, mid, b, near) && !missesBetween(weave, a, mid, b, near)
  if (b.u - a.u < WIDEST * 0.6 && fine) return
  halve(weave, near, a, mid, into)
  into.push(mid)
  halve(weave, near, mid, b, into)
}
