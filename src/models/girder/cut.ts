/** A plumb cut through a beam, square to it in plan, and what can be measured on it. */
import type { Vec3 } from '../../plan/types'

/** A frame in plan: u along the beam, v to its left. */
export interface PlanFrame {
  origin: Vec3
  /** Unit vector in plan. */
  along: [number, number]
}

/** A piece of the cut's outline: (v, z) to (v, z). */
export type CutEdge = [number, number, number, number]

export const uOf = (f: PlanFrame, x: number, y: number): number =>
  (x - f.origin[0]) * f.along[0] + (y - f.origin[1]) * f.along[1]
const vOf = (f: PlanFrame, x: number, y: number): number =>
  (y - f.origin[1]) * f.along[0] - (x - f.origin[0]) * f.along[1]

/** The outline where the plane at u cuts the triangles. */
export function cutAt(t: Float32Array, frame: PlanFrame, u: number): CutEdge[] {
  const edges: CutEdge[] = []
  for (let i = 0; i < t.length; i += 9) {
    const hits: [number, number][] = []
    for (let k = 0; k < 3; k++) {
      const [a, b] = [i + 3 * k, i + 3 * ((k + 1) % 3)]
      const ua = uOf(frame, t[a]!, t[a + 1]!) - u
      const ub = uOf(frame, t[b]!, t[b + 1]!) - u
      if (ua < 0 === ub < 0) continue
      const s = ua / (ua - ub)
      const [x, y, z] = [0, 1, 2].map((c) => t[a + c]! + s * (t[b + c]! - t[a + c]!))
      hits.push([vOf(frame, x!, y!), z!])
    }
    if (hits.length === 2) edges.push([...hits[0]!, ...hits[1]!])
  }
  return edges
}

export interface CutFigures {
  top: number
  bottom: number
  /** Middle of the top surface, v. */
  middle: number
  topWidth: number
  topThickness: number
  webThickness: number
  bottomWidth: number
  bottomThickness: number
}

/** Where a level crosses the outline: crossings in order of v, in pairs inside. */
function crossings(edges: CutEdge[], z: number): number[] {
  const found: number[] = []
  for (const [v1, z1, v2, z2] of edges) {
    if (z1 < z === z2 < z) continue
    found.push(v1 + ((z - z1) / (z2 - z1)) * (v2 - v1))
  }
  return found.sort((a, b) => a - b)
}

/** Solid width at a level, m: the sum of the stretches inside. */
function solidWidth(edges: CutEdge[], z: number): number {
  const at = crossings(edges, z)
  let sum = 0
  for (let i = 0; i + 1 < at.length; i += 2) sum += at[i + 1]! - at[i]!
  return sum
}

/** Levels at which a cut is measured. */
const LEVELS = 400

/** Figures of an I, a box or a plain rectangle; null where the cut is empty. */
export function measureCut(edges: CutEdge[]): CutFigures | null {
  if (edges.length < 3) return null
  const zs = edges.flatMap((e) => [e[1], e[3]])
  const [top, bottom] = [Math.max(...zs), Math.min(...zs)]
  const depth = top - bottom
  if (depth <= 0) return null
  const level = (i: number): number => bottom + (depth * (i + 0.5)) / LEVELS
  const widths = Array.from({ length: LEVELS }, (_, i) => solidWidth(edges, level(i)))
  const at = crossings(edges, level(LEVELS - 1))
  const web = Math.min(...widths.slice(LEVELS * 0.25, LEVELS * 0.75))
  const upper = widths[LEVELS - 1]!
  const lower = widths[0]!
  return {
    top,
    bottom,
    middle: at.length > 1 ? (at[0]! + at[at.length - 1]!) / 2 : 0,
    topWidth: at.length > 1 ? at[at.length - 1]! - at[0]! : upper,
    topThickness: (depth * reachOf([...widths].reverse(), (upper + web) / 2)) / LEVELS,
    webThickness: web,
    bottomWidth: lower,
    bottomThickness: (depth * reachOf(widths, (lower + web) / 2)) / LEVELS,
  }
}

/** How many levels from the first on are at least as wide as `width`; a plain rectangle has a quarter on either side. */
function reachOf(widths: number[], width: number): number {
  const end = widths.findIndex((w) => w < width - 1e-9)
  return end < 0 ? widths.length / 4 : Math.max(1, end)
}
