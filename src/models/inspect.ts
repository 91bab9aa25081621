/** Looks a model over: what would make a gap to it wrong or strange is told before it is used. */
import type { Vec3 } from '../plan/types'

/** More triangles than this are refused: the index over them would not fit a desk's memory. */
const MOST_TRIANGLES = 8_000_000
/** Open edges are counted up to this many triangles; a larger model is not asked. */
const MOST_WELDED = 1_500_000

export interface Inspection {
  low: Vec3
  high: Vec3
  notes: string[]
}

export type Inspected = { ok: true; value: Inspection } | { ok: false; why: string }

/** Bounds, and notes on what is odd; refuses what has no triangles, too many, or corners that are no numbers. */
export function inspect(triangles: Float32Array): Inspected {
  const count = triangles.length / 9
  if (count === 0) return { ok: false, why: 'the model has no triangles' }
  if (count > MOST_TRIANGLES) {
    return {
      ok: false,
      why: `the model has ${count} triangles, more than the ${MOST_TRIANGLES} that can be measured`,
    }
  }
  const bounds = boundsOf(triangles)
  if (!bounds) return { ok: false, why: 'the model has corners that are no finite numbers' }
  const size = Math.max(...[0, 1, 2].map((k) => bounds.high[k]! - bounds.low[k]!))
  if (size === 0) return { ok: false, why: 'all corners of the model lie in one point' }
  return {
    ok: true,
    value: { ...bounds, notes: [...sizeNotes(size), ...farNotes(bounds), ...skinNotes(triangles, count)] },
  }
}

function boundsOf(triangles: Float32Array): { low: Vec3; high: Vec3 } | null {
  const low: Vec3 = [Infinity, Infinity, Infinity]
  const high: Vec3 = [-Infinity, -Infinity, -Infinity]
  for (let i = 0; i < triangles.length; i++) {
    const v = triangles[i]!
    if (!Number.isFinite(v)) return null
    const k = i % 3
    if (v < low[k]!) low[k] = v
    if (v > high[k]!) high[k] = v
  }
  return { low, high }
}

const round = (x: number): string => x.toPrecision(3)

function sizeNotes(size: number): string[] {
  if (size > 1000)
    return [`it is ${round(size)} units long: in metres that is large; it may be in millimetres`]
  if (size < 0.05) return [`it is ${round(size)} units long: in metres that is tiny; its units may be larger`]
  return []
}

/** Single-precision coordinates far from the origin are coarse. */
function farNotes({ low, high }: { low: Vec3; high: Vec3 }): string[] {
  const far = Math.max(...low.map(Math.abs), ...high.map(Math.abs))
  const step = far * 2 ** -23
  if (step < 0.005) return []
  return [
    `its coordinates are as large as ${round(far)}: they are kept to ${round(step)} units, so gaps to it are too`,
  ]
}

/** Whether the surface is closed and faces outwards. Gaps are measured to its triangles either way. */
function skinNotes(triangles: Float32Array, count: number): string[] {
  if (count > MOST_WELDED) return ['it is so large that it was not tried whether its surface is closed']
  const open = openEdges(triangles, count)
  if (open > 0) {
    return [`its surface is open (${open} edges): gaps are measured to its triangles, not to an inside`]
  }
  return signedVolume(triangles) < 0 ? ['its surface is inside out: gaps are not affected'] : []
}

/** Edges that are not run once each way, corners welded where they are the same to the bit. */
function openEdges(triangles: Float32Array, count: number): number {
  const ids = new Map<string, number>()
  const corner = new Uint32Array(count * 3)
  for (let i = 0; i < corner.length; i++) {
    const key = `${triangles[i * 3]},${triangles[i * 3 + 1]},${triangles[i * 3 + 2]}`
    let id = ids.get(key)
    if (id === undefined) {
      id = ids.size
      ids.set(key, id)
    }
    corner[i] = id
  }
  const balance = new Map<number, number>()
  for (let t = 0; t < corner.length; t += 3) {
    for (let k = 0; k < 3; k++) {
      const a = corner[t + k]!
      const b = corner[t + ((k + 1) % 3)]!
      if (a === b) continue
      const key = Math.min(a, b) * ids.size + Math.max(a, b)
      balance.set(key, (balance.get(key) ?? 0) + (a < b ? 1 : -1))
    }
  }
  let open = 0
  for (const sum of balance.values()) if (sum !== 0) open++
  return open
}

function signedVolume(t: Float32Array): number {
  let six = 0
  for (let i = 0; i < t.length; i += 9) {
    const [ax, ay, az] = [t[i]! - t[0]!, t[i + 1]! - t[1]!, t[i + 2]! - t[2]!]
    const [bx, by, bz] = [t[i + 3]! - t[0]!, t[i + 4]! - t[1]!, t[i + 5]! - t[2]!]
    const [cx, cy, cz] = [t[i + 6]! - t[0]!, t[i + 7]! - t[1]!, t[i + 8]! - t[2]!]
    six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)
  }
  return six
}
