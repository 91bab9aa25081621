/** Where a connector is tied: a bit of rope, or a stanchion's head where it stands within reach of one. */
import { pointAt } from '../catenary'
import type { TimeFallInput, TimeWorker } from './types'

/** Nearer to a stanchion than this a connector counts as tied to it: the line cannot give there, m. */
export const AT_STANCHION = 0.03

/** A point that a connector is tied to: a node of the rope, or (node -1) a stanchion's head. */
export interface Tie {
  node: number
  stanchion: number
  x: number
  z: number
}

/** Where a worker's connector is tied on the resting line; `at`: unstretched rope up to there, m (-1: stanchion). */
export interface TiePoint {
  at: number
  stanchion: number
  x: number
  z: number
}

/** Finds it; heads and rope as they stand on the resting line. */
export function tiePoint(
  input: TimeFallInput,
  w: TimeWorker,
  headX: number[],
  headZ: number[],
  ropeTo: number[],
): TiePoint {
  const local = w.x - headX[w.span]!
  const reach = headX[w.span + 1]! - headX[w.span]!
  if (local < AT_STANCHION || reach - local < AT_STANCHION) {
    const stanchion = local < reach / 2 ? w.span : w.span + 1
    return { at: -1, stanchion, x: headX[stanchion]!, z: headZ[stanchion]! }
  }
  const p = ropeUpTo(input, w.span, local)
  const z = headZ[w.span]! + pointAt(input.line.spans[w.span]!, p, input.set.stiffness, input.set.weight).dz
  return { at: ropeTo[w.span]! + p, stanchion: -1, x: w.x, z }
}

/** Unstretched rope from a span's first head to the horizontal distance x from it, m. */
function ropeUpTo(input: TimeFallInput, span: number, x: number): number {
  const s = input.line.spans[span]!
  const { stiffness, weight } = input.set
  let low = 0
  let high = s.L
  // Sixty halvings: to the last bit of any span.
  for (let i = 0; i < 60; i++) {
    const mid = (low + high) / 2
    if (pointAt(s, mid, stiffness, weight).dx < x) low = mid
    else high = mid
  }
  return (low + high) / 2
}
