/** The greatest means so far: tension of any element, pull on every head. */
import type { HeadPull } from './types'

export interface Peaks {
  tension: number
  time: number
  element: number
  heads: (HeadPull & { resultantSquared: number })[]
}

/** @param tension what the rope has anyway where it does not move, N */
export const freshPeaks = (heads: number, tension: number): Peaks => ({
  tension,
  time: 0,
  element: 0,
  heads: Array.from({ length: heads }, () => ({
    along: 0,
    down: Number.NEGATIVE_INFINITY,
    together: { along: 0, down: 0 },
    resultantSquared: -1,
  })),
})

/** @param mean channels as in `Motion.sums`; @param idle constant pull of spans that do not move */
export function notePeaks(
  p: Peaks,
  mean: Float64Array,
  elements: number,
  idle: Float64Array,
  time: number,
): void {
  let most = p.tension
  let at = -1
  for (let e = 0; e < elements; e++) {
    if (mean[e]! > most) {
      most = mean[e]!
      at = e
    }
  }
  if (at >= 0) Object.assign(p, { tension: most, time, element: at })
  noteHeads(p, mean, elements, idle)
}

function noteHeads(p: Peaks, mean: Float64Array, elements: number, idle: Float64Array): void {
  for (const [j, head] of p.heads.entries()) {
    const along = Math.abs(mean[elements + 2 * j]! + idle[2 * j]!)
    const down = mean[elements + 2 * j + 1]! + idle[2 * j + 1]!
    if (along > head.along) head.along = along
    if (down > head.down) head.down = down
    const resultant = along * along + down * down
    if (resultant > head.resultantSquared) {
      head.resultantSquared = resultant
      head.together = { along, down }
    }
  }
}
