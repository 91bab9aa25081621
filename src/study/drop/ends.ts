/** Where a fall's picture ends: from then on its figures would mean nothing. */
import type { FallHistory, TimeFall, TimeWorker } from '../../solver/time/types'
import type { LineInput } from '../line-input'
import type { DroppedWorker, DropStudy } from './types'

type End = NonNullable<DropStudy['ends']>

/** Rounding of the history's single precision. */
const ROUNDING = 1e-4

function firstTime(h: FallHistory, holds: (f: number) => boolean): number | null {
  for (let f = 0; f < h.frames; f++) if (holds(f)) return h.times[f]!
  return null
}

function ropeParts(h: FallHistory, strength: number): End | null {
  const n = h.nodes - 1
  const at = firstTime(h, (f) => h.tension.subarray(f * n, (f + 1) * n).some((t) => t > strength))
  return at === null ? null : { at, why: 'the tension is over what the rope holds at its terminations' }
}

function absorberEnds(h: FallHistory, most: number): End | null {
  const at = firstTime(h, (f) => h.absorberExtension[f]! >= most * (1 - ROUNDING))
  return at === null ? null : { at, why: 'the line absorber has run out: it has given all it has' }
}

/** A connector pulls harder than its plateau only once it has torn to its end. */
function connectorEnds(h: FallHistory, index: number, one: TimeWorker, name: string): End | null {
  const { plateau } = one.connector
  const at = firstTime(h, (f) => h.connectorForce[f * h.workers + index]! > plateau * (1 + ROUNDING))
  return at === null ? null : { at, why: `the connector of ${name} has run out: it has torn to its end` }
}

/** The first of: rope past its strength, absorber or connector at its end, a body that strikes something. */
export function endOf(
  fall: TimeFall,
  input: LineInput,
  strength: number,
  workers: DroppedWorker[],
  bodies: TimeWorker[],
): DropStudy['ends'] {
  const h = fall.history
  if (!h) return null
  const all = [
    fall.whole.tension > strength ? ropeParts(h, strength) : null,
    input.absorber ? absorberEnds(h, input.absorber.maxExtension) : null,
    ...bodies.map((one, i) => connectorEnds(h, i, one, workers[i]!.name)),
    ...workers.map(({ strikes }) =>
      strikes
        ? { at: strikes.at, why: `the body strikes ${strikes.what.name} at ${strikes.speed.toFixed(1)} m/s` }
        : null,
    ),
  ]
  return all.filter((e) => e !== null).sort((a, b) => a.at - b.at)[0] ?? null
}
