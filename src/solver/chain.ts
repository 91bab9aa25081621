/**
 * A chain of spans that shares one rope: the whole line where the rope slides, one span where it is held. The chain
 * is solved for its rope length; how it got its rope is the business of `installed.ts`.
 */
import { type AbsorberLaw, addedRope } from './absorber'
import { tensionBelow } from './catenary'
import type { LineSet } from './model'
import { type FreeSpan, freeSpanAtTension, type LoadedTarget, type SpanTarget } from './span'

export interface Chain {
  /** Horizontal distance and rise of each span between the heads as measured, m. */
  X: number[]
  Z: number[]
  EA: number
  w: number
  /** 1/K of the head before the first and after the last span, m/N; 0: rigid. */
  give: [number, number]
  /** H at which those heads stand as measured, N. */
  heldAt: [number, number]
  absorber: AbsorberLaw | null
  absorberAt: 'start' | 'end'
  /** Unstretched rope in the chain without what the absorber pays out, m. */
  rope: number
}

/** A chain without a load, from the tension at its absorber's end. */
export interface FreeChain {
  spans: FreeSpan[]
  /** Tension at the absorber's end, N. */
  tension: number
  /** Unstretched length in all spans, m, and its derivative by that tension. */
  length: number
  slope: number
}

const targets = new WeakMap<Chain, SpanTarget[]>()

/** The target of span i, made once for a chain: walks ask for it in every round. */
function spanTarget(c: Chain, i: number): SpanTarget {
  let made = targets.get(c)
  if (!made) {
    made = c.X.map((_, k) => makeTarget(c, k))
    targets.set(c, made)
  }
  return made[i]!
}

/** Distances of span i and how its ends give. */
function makeTarget(c: Chain, i: number): SpanTarget {
  const first = i === 0 ? c.give[0] : 0
  const last = i === c.X.length - 1 ? c.give[1] : 0
  return {
    X: c.X[i]!,
    Z: c.Z[i]!,
    EA: c.EA,
    w: c.w,
    give: first + last,
    giveAt: first * c.heldAt[0] + last * c.heldAt[1],
  }
}

/** The loaded target of span i with the load at horizontal distance X1 from its first head. */
export function loadedTarget(c: Chain, i: number, X1: number): LoadedTarget {
  const first = i === 0 ? c.give[0] : 0
  const last = i === c.X.length - 1 ? c.give[1] : 0
  return {
    X1,
    X2: c.X[i]! - X1,
    Z: c.Z[i]!,
    EA: c.EA,
    w: c.w,
    give: [first, last],
    giveAt: [first * c.heldAt[0], last * c.heldAt[1]],
  }
}

/** Spans i, i+step, ... reached with tension T at the near end, walking away from the caller; null: not converged. */
export interface Walk {
  length: number
  slope: number
  /** Tension at the far end of the walk and its derivative by T. */
  far: number
  farSlope: number
}

/** Walks over unloaded spans (step +1: to the right, -1: to the left), filling `out`; `near` is warm start too. */
export function walkSpans(
  c: Chain,
  from: number,
  step: 1 | -1,
  T: number,
  out: (FreeSpan | undefined)[],
): Walk | null {
  let tension = T
  let chainRule = 1
  let length = 0
  let slope = 0
  for (let i = from; i >= 0 && i < c.X.length; i += step) {
    const target = spanTarget(c, i)
    const Ta = step === 1 ? tension : tensionBelow(tension, target.Z, c.EA, c.w)
    const span = freeSpanAtTension(target, Ta, out[i])
    if (!span) return null
    out[i] = span
    // T + T^2/(2EA) - wz is the same all along: dT_far (1 + T_far/EA) = dT_near (1 + T_near/EA).
    const across = (1 + span.Ta / c.EA) / (1 + span.Tb / c.EA)
    const byTa = step === 1 ? chainRule : chainRule / across
    length += span.L
    slope += span.dL * byTa
    tension = step === 1 ? span.Tb : span.Ta
    chainRule = step === 1 ? chainRule * across : byTa
  }
  return { length, slope, far: tension, farSlope: chainRule }
}

/** The unloaded chain with tension T at the absorber's end; null where the rope is too slack to reach it. */
export function freeChainAt(c: Chain, T: number, start?: FreeSpan[]): FreeChain | null {
  const spans: (FreeSpan | undefined)[] = start ? [...start] : []
  const step = c.absorberAt === 'start' ? 1 : -1
  const walk = walkSpans(c, step === 1 ? 0 : c.X.length - 1, step, T, spans)
  if (!walk) return null
  return { spans: spans as FreeSpan[], tension: T, length: walk.length, slope: walk.slope }
}

/**
 * The unloaded chain that uses up its rope: Newton on the tension at the absorber's end, inside a bracket.
 * F(T) = sum of L - rope - x_a/(1 + T/EA) falls with T. Null where not converged.
 */
export function solveFreeChain(c: Chain, guess: number): FreeChain | null {
  let T = guess
  let low = 0
  let high = Number.POSITIVE_INFINITY
  let last: FreeSpan[] | undefined
  for (let i = 0; i < 100; i++) {
    const at = freeChainAt(c, T, last)
    if (!at) {
      low = T
      T = high === Number.POSITIVE_INFINITY ? T * 2 : (T + high) / 2
      last = undefined
      continue
    }
    last = at.spans
    const added = addedRope(c.absorber, T, c.EA)
    const F = at.length - c.rope - added.rope
    const slope = at.slope - added.slope
    if (F > 0) low = T
    else high = T
    const step = -F / slope
    if (Math.abs(F) <= 1e-13 * c.rope || Math.abs(step) <= 1e-11 * T) return at
    const next = T + step
    T = next > low && next < high ? next : high < Number.POSITIVE_INFINITY ? (low + high) / 2 : T * 2
  }
  return null
}

/** The chain of a set before it is given its rope: geometry, stiffness and ends. */
export function bareChain(set: LineSet, x: number[], z: number[]): Chain {
  return {
    X: x.slice(1).map((v, i) => v - x[i]!),
    Z: z.slice(1).map((v, i) => v - z[i]!),
    EA: set.stiffness,
    w: set.weight,
    give: [0, 0],
    heldAt: [0, 0],
    absorber: null,
    absorberAt: 'start',
    rope: 0,
  }
}
