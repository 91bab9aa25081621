/** Refuses what is no fall, in plain words, before any number is computed. */
import type { TimeFallInput, TimeWorker } from './types'

const positive = (v: number): boolean => Number.isFinite(v) && v > 0

/** Why this input cannot be computed, or null. */
export function faultOf(input: TimeFallInput): string | null {
  const spans = input.line.spans
  if (spans.length === 0 || spans.length !== input.model.x.length - 1)
    return `${spans.length} spans between ${input.model.x.length} heads`
  for (const [i, s] of spans.entries())
    if (!positive(s.L) || !positive(s.H) || !Number.isFinite(s.V)) return `span ${i} has no resting shape`
  if (!positive(input.set.stiffness) || !positive(input.set.weight))
    return 'the rope has no stiffness or no weight'
  if (!input.model.endStiffness.every(positive)) return 'an end head has no stiffness along the line'
  if (!input.model.endMass.every(positive)) return 'an end head has no mass'
  if (input.workers.length === 0) return 'nobody falls'
  for (const [i, w] of input.workers.entries()) {
    const fault = workerFault(w, input)
    if (fault) return `worker ${i}: ${fault}`
  }
  return null
}

function workerFault(w: TimeWorker, input: TimeFallInput): string | null {
  if (!positive(w.mass)) return `mass of ${w.mass} kg`
  if (!positive(w.length)) return `connector length of ${w.length} m`
  if (!positive(w.connector.stiffness)) return `connector stiffness of ${w.connector.stiffness} N/m`
  if (!(w.connector.plateau >= 0 && w.connector.maxExtension >= 0)) return 'connector without a plateau'
  if (!(w.span >= 0 && w.span < input.line.spans.length)) return `span ${w.span} is not there`
  const from = input.model.x[w.span]! - 1e-6
  const to = input.model.x[w.span + 1]! + 1e-6
  if (!(w.x >= from && w.x <= to)) return `${w.x} m does not lie in span ${w.span}`
  if (!((w.delay ?? 0) >= 0)) return `delay of ${w.delay} s`
  if (![w.surface, w.dRingHeight, w.harnessStretch, w.marginBelow].every(Number.isFinite))
    return 'a height is missing'
  return null
}
