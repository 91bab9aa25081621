/**
 * A chain under one point load (mechanics section 3): one unknown, the horizontal force H of the loaded span. The
 * loaded span follows from H; its neighbours follow from the tension that the rope carries over each stanchion; what
 * is left is that the rope must be used up. Everything else is derivatives of that.
 */
import { absorberExtension, addedRope } from './absorber'
import { type Chain, loadedTarget, walkSpans } from './chain'
import { type FreeSpan, type LoadedSpan, type LoadedTarget, loadedSpan } from './span'

export interface LoadedChain {
  P: number
  H: number
  /** The loaded span and its index in the chain. */
  span: number
  at: LoadedSpan
  /** The other spans of the chain by index (the loaded one is left out). */
  others: (FreeSpan | undefined)[]
  /** dH/dP at the fixed station. */
  forceSlope: number
  /** Height of the load above the loaded span's first head, m, and its derivative by P, m/N. */
  height: number
  heightSlope: number
  /** Tension at the absorber's end, N, its derivative by P, and the absorber's extension, m. */
  endTension: number
  endTensionSlope: number
  absorberExtension: number
}

interface Trial {
  F: number
  /** Derivatives of F by [H, P]. */
  byH: number
  byP: number
  endTension: number
  endByH: number
  endByP: number
  at: LoadedSpan
}

/** Evaluates the rope balance F = sum of L - rope - x_a/(1 + T/EA) and its derivatives at H and P. */
function trial(
  c: Chain,
  span: number,
  target: LoadedTarget,
  H: number,
  P: number,
  others: (FreeSpan | undefined)[],
  start?: LoadedSpan,
  into?: LoadedSpan,
): Trial | null {
  const at = loadedSpan(target, H, P, start, into) ?? loadedSpan(target, H, P)
  if (!at) return null
  const { first, second, V, dV, dL1, dL2 } = at
  // Tension at the loaded span's ends by H and by P: T^2 = H^2 + V^2, and the far end carries V - w L - P.
  const firstByH = (H + V * dV[0]) / first.Ta
  const firstByP = (V * dV[1]) / first.Ta
  const secondByH = (H + second.E * (dV[0] - c.w * (dL1[0] + dL2[0]))) / second.Tb
  const secondByP = (second.E * (dV[1] - c.w * (dL1[1] + dL2[1]) - 1)) / second.Tb
  const left = walkSpans(c, span - 1, -1, first.Ta, others)
  const right = walkSpans(c, span + 1, 1, second.Tb, others)
  if (!left || !right) return null
  const atStart = c.absorberAt === 'start'
  const end = atStart ? left : right
  const endByH = end.farSlope * (atStart ? firstByH : secondByH)
  const endByP = end.farSlope * (atStart ? firstByP : secondByP)
  const added = addedRope(c.absorber, end.far, c.EA)
  return {
    F: at.L1 + at.L2 + left.length + right.length - c.rope - added.rope,
    byH: dL1[0] + dL2[0] + left.slope * firstByH + right.slope * secondByH - added.slope * endByH,
    byP: dL1[1] + dL2[1] + left.slope * firstByP + right.slope * secondByP - added.slope * endByP,
    endTension: end.far,
    endByH,
    endByP,
    at,
  }
}

function result(
  c: Chain,
  span: number,
  P: number,
  H: number,
  t: Trial,
  others: (FreeSpan | undefined)[],
): LoadedChain {
  const hP = -t.byP / t.byH
  const { first } = t.at
  const vP = t.at.dV[0] * hP + t.at.dV[1]
  const lP = t.at.dL1[0] * hP + t.at.dL1[1]
  return {
    P,
    H,
    span,
    at: t.at,
    others: [...others],
    forceSlope: hP,
    height: first.dz,
    heightSlope: first.zH * hP + first.zV * vP + first.zL * lP,
    endTension: t.endTension,
    endTensionSlope: t.endByH * hP + t.endByP,
    absorberExtension: absorberExtension(c.absorber, t.endTension),
  }
}

/** Where a solve may begin: a neighbouring solution of the same chain and load position. */
export interface LoadedStart {
  H: number
  at?: LoadedSpan
  others: (FreeSpan | undefined)[]
}

/**
 * The chain with load P (N, down) at horizontal distance X1 from the first head of span `span`. F falls with H, so
 * Newton's steps are kept inside a bracket. Null where not converged.
 */
export function solveLoadedChain(
  c: Chain,
  span: number,
  X1: number,
  P: number,
  start: LoadedStart,
): LoadedChain | null {
  const target = loadedTarget(c, span, X1)
  const others = [...start.others]
  let H = start.H
  let at = start.at
  // The loaded span of this solve alone, written anew by each of its rounds.
  let own: LoadedSpan | undefined
  let low = 0
  let high = Number.POSITIVE_INFINITY
  for (let i = 0; i < 120; i++) {
    const t = trial(c, span, target, H, P, others, at, own)
    if (!t) {
      at = undefined
      others.length = 0
      low = Math.max(low, H)
      H = high < Number.POSITIVE_INFINITY ? (low + high) / 2 : H * 1.5
      continue
    }
    at = own = t.at
    if (t.F > 0) low = H
    else high = H
    const step = -t.F / t.byH
    if (Math.abs(t.F) <= 2e-14 * c.rope || Math.abs(step) <= 1e-11 * H)
      return result(c, span, P, H, t, others)
    const next = H + step
    if (next > low && next < high) H = next
    else H = high < Number.POSITIVE_INFINITY ? (low + high) / 2 : H * 2
  }
  return null
}

/** Greatest tension anywhere in a loaded chain, N. */
export function greatestTension(s: LoadedChain): number {
  let T = Math.max(s.at.first.Ta, s.at.first.Tb, s.at.second.Ta, s.at.second.Tb)
  for (const o of s.others) if (o) T = Math.max(T, o.Ta, o.Tb)
  return T
}
