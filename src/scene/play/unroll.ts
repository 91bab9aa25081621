/**
 * From the plane in which a fall is computed (x along the line from the first head, laid out straight; z elevation) to
 * the plan's coordinates: along the heads in plan, carried on past both ends.
 */
import type { Vec3 } from '../../plan/types'

export type Unroll = (x: number, z: number, to: Float32Array, at: number) => void

/** Writes the point at (x, z) into `to` from index `at` on. */
export function unrollAlong(heads: readonly Vec3[]): Unroll {
  const starts = [0]
  for (let i = 1; i < heads.length; i++) {
    const [a, b] = [heads[i - 1]!, heads[i]!]
    starts.push(starts[i - 1]! + Math.hypot(b[0] - a[0], b[1] - a[1]))
  }
  const last = Math.max(0, heads.length - 2)
  return (x, z, to, at) => {
    let span = 0
    while (span < last && x > starts[span + 1]!) span++
    const a = heads[span] ?? [0, 0, 0]
    const b = heads[span + 1] ?? a
    const long = starts[span + 1]! - starts[span]! || 1
    const share = (x - starts[span]!) / long
    to[at] = a[0] + (b[0] - a[0]) * share
    to[at + 1] = a[1] + (b[1] - a[1]) * share
    to[at + 2] = z
  }
}
