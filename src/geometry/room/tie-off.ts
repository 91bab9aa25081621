/** Where can one tie off: every bit of walking surface, and the lines whose rope is in reach from there. */
import type { Vec2, Vec3 } from '../../plan/types'
import { contains, nearestOnSegment } from '../polygon'
import { connectorReach } from './swing'
import type { RoomWorker, SurfacePiece } from './types'

/** A line as something to hook on to. */
export interface TieOffLine {
  line: string
  /** Its rope's heads in order. */
  heads: Vec3[]
  /** Rope above the walking surface, m. */
  height: number
  workers: RoomWorker[]
}

/** A square of walking surface. */
export interface TieOffCell {
  /** Its middle. */
  at: Vec2
  /** Half its side, m. */
  half: number
  /** Lines that a worker standing there can be hooked to. */
  lines: string[]
}

/**
 * How far in plan a worker of the line can stand from it, m: what the longest connector of its crew lets him. A
 * retractable pays out past its lock-off distance; how far is not in the plan, so its lock-off distance alone counts here.
 */
export function tieOffReach({ workers, height }: TieOffLine): number {
  return workers.reduce((most, w) => {
    const reach =
      w.type === 'retractable'
        ? Math.sqrt(Math.max(0, w.length ** 2 - (w.dRingHeight - height) ** 2))
        : connectorReach(w, height)
    return Math.max(most, reach)
  }, 0)
}

/** The walking surfaces in squares of `step`, m, each with the lines in reach of its middle. */
export function tieOffMap(surfaces: SurfacePiece[], lines: TieOffLine[], step: number): TieOffCell[] {
  const reaches = lines.map((l) => ({ ...l, reach: tieOffReach(l) }))
  const seen = new Set<string>()
  return surfaces.flatMap(({ outline }) =>
    squaresOf(outline, step).flatMap((at): TieOffCell[] => {
      const key = `${Math.floor(at[0] / step)},${Math.floor(at[1] / step)}`
      if (seen.has(key)) return []
      seen.add(key)
      const near = reaches.filter((l) => planDistance(l.heads, at) <= l.reach)
      return [{ at, half: step / 2, lines: near.map((l) => l.line) }]
    }),
  )
}

/** Middles of the squares of a common grid that lie in a convex outline. */
function squaresOf(outline: Vec2[], step: number): Vec2[] {
  const xs = outline.map((p) => p[0])
  const ys = outline.map((p) => p[1])
  const found: Vec2[] = []
  for (let i = Math.floor(Math.min(...xs) / step); i <= Math.max(...xs) / step; i++) {
    for (let k = Math.floor(Math.min(...ys) / step); k <= Math.max(...ys) / step; k++) {
      const at: Vec2 = [(i + 0.5) * step, (k + 0.5) * step]
      if (contains(outline, at)) found.push(at)
    }
  }
  return found
}

/** Distance in plan from a point to a rope, m. */
function planDistance(heads: Vec3[], at: Vec2): number {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i + 1 < heads.length; i++) {
    const [a, b] = [heads[i]!, heads[i + 1]!]
    const q = nearestOnSegment([a[0], a[1]], [b[0], b[1]], at)
    least = Math.min(least, Math.hypot(q[0] - at[0], q[1] - at[1]))
  }
  return least
}
