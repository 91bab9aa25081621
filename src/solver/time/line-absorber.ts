/**
 * The line absorber in time: rigid up to its yield force, which climbs with what it has given (section 3: onset to full
 * over maxExtension, past that 10 MN/m); nothing comes back. It stands in series with the element at its end, whose
 * elasticity and damping make it elastic-plastic. The flow in a step is solved implicitly, so it cannot overshoot.
 */
import { RUN_OUT_STIFFNESS } from '../model'

export interface LineAbsorber {
  onset: number
  full: number
  maxExtension: number
  /** Extension in all, m, and how much of it was there before the fall. */
  extension: number
  initial: number
  /** J */
  lost: number
}

export function lineAbsorber(
  law: { onset: number; full: number; maxExtension: number } | null,
  initial: number,
): LineAbsorber | null {
  return law && { ...law, extension: initial, initial, lost: 0 }
}

/** Yield force at the present extension, N. */
export function yieldForce(a: LineAbsorber): number {
  if (a.extension < a.maxExtension) return a.onset + ((a.full - a.onset) * a.extension) / a.maxExtension
  return a.full + RUN_OUT_STIFFNESS * (a.extension - a.maxExtension)
}

/** Flows with the given slope up to `most`; returns the tension that is left. */
function flow(a: LineAbsorber, tension: number, give: number, slope: number, most: number): number {
  const yields = yieldForce(a)
  const by = Math.min((tension - yields) / (give + slope), most)
  a.lost += (yields + (slope * by) / 2) * by
  a.extension += by
  return tension - give * by
}

/**
 * Tension in its element once the absorber has flowed, N.
 * @param tension what the element would carry without flow, N
 * @param give how that falls with flow in this step, N/m: k + c/dt
 */
export function absorb(a: LineAbsorber, tension: number, give: number): number {
  if (tension <= yieldForce(a)) return tension
  let T = tension
  const left = a.maxExtension - a.extension
  if (left > 0) T = flow(a, T, give, (a.full - a.onset) / a.maxExtension, left)
  if (a.extension >= a.maxExtension && T > yieldForce(a))
    T = flow(a, T, give, RUN_OUT_STIFFNESS, Number.POSITIVE_INFINITY)
  return T
}
