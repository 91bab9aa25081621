/** A fall against time as rows of figures, one for each picture: what the plots draw. */
import type { DropStudy } from './types'

export interface FallSeries {
  /** s */
  times: Float64Array
  /** Greatest in the rope at that instant, mean over 5 ms, N. */
  tension: Float64Array
  /** On each body, N, and its D-ring above the walking surface, m. */
  force: Float64Array[]
  height: Float64Array[]
  /** J */
  energies: { kinetic: Float64Array; potential: Float64Array; elastic: Float64Array; lost: Float64Array }
}

const every = (frames: number, value: (f: number) => number): Float64Array =>
  Float64Array.from({ length: frames }, (_, f) => value(f))

function greatest(values: Float32Array, from: number, to: number): number {
  let most = 0
  for (let i = from; i < to; i++) if (values[i]! > most) most = values[i]!
  return most
}

/** Null without a history. Absorbed by absorbers, connectors and the rope counts as lost. */
export function seriesOf({ fall, workers }: Pick<DropStudy, 'fall' | 'workers'>): FallSeries | null {
  const h = fall.history
  if (!h) return null
  const n = h.nodes - 1
  const energy = (kind: number) => every(h.frames, (f) => h.energies[4 * f + kind]!)
  return {
    times: h.times,
    tension: every(h.frames, (f) => greatest(h.tension, f * n, (f + 1) * n)),
    force: workers.map((_, w) => every(h.frames, (f) => h.connectorForce[f * h.workers + w]!)),
    height: workers.map((one, w) => every(h.frames, (f) => h.workerZ[f * h.workers + w]! - one.surface)),
    energies: { kinetic: energy(0), potential: energy(1), elastic: energy(2), lost: energy(3) },
  }
}
