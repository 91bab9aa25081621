/**
 * One span between two heads, with the rope's tension or horizontal force given: the inner solves of a line.
 * Newton's method on the exact catenary; every function says whether it converged.
 */
import { blankTangent, type SegmentTangent, segmentTangent } from './catenary'

/** What a span must reach and how its ends give: dx + sum((H - H0)/K) = X, dz = Z. */
export interface SpanTarget {
  X: number
  Z: number
  EA: number
  w: number
  /** 1/K summed over giving ends of this span, m/N (0 where both are rigid). */
  give: number
  /** sum(H0/K) over the same ends, m. */
  giveAt: number
}

/** A span without a load; `dL` is the derivative of its length by the tension at its first end, m/N. */
export interface FreeSpan {
  H: number
  V: number
  L: number
  Ta: number
  Tb: number
  dL: number
}

const ROUNDS = 60

/** What the rounds of a solve write their tangents into; nothing of it outlives its round. */
const scratch = [blankTangent(), blankTangent()] as const

/** The straight-chord guess for the vertical component at the first end. */
const guessV = (t: SpanTarget, H: number, L: number): number => (t.w * L) / 2 - (H * t.Z) / t.X

/**
 * An unloaded span whose tension at the first end is Ta: unknown V and L (H follows from Ta and V).
 * Returns null where it does not converge (a rope too slack to reach that tension).
 */
export function freeSpanAtTension(t: SpanTarget, Ta: number, start?: FreeSpan): FreeSpan | null {
  const chord = Math.hypot(t.X, t.Z)
  let L = start?.L ?? chord / (1 + Ta / t.EA)
  let V = start?.V ?? guessV(t, (Ta * t.X) / chord, L)
  for (let i = 0; i < ROUNDS; i++) {
    if (!(Math.abs(V) < Ta)) V = Math.sign(V) * Ta * 0.999
    const H = Math.sqrt(Ta * Ta - V * V)
    const s = segmentTangent(H, V, L, t.EA, t.w, scratch[0])
    const hV = -V / H
    const a = s.xV + (s.xH + t.give) * hV
    const c = s.zV + s.zH * hV
    const rx = s.dx + t.give * H - t.giveAt - t.X
    const rz = s.dz - t.Z
    const det = a * s.zL - s.xL * c
    const dV = -(rx * s.zL - s.xL * rz) / det
    const dL = -(a * rz - c * rx) / det
    V += dV
    L = Math.max(L + dL, L / 4)
    if (Math.abs(dL) <= 1e-13 * L && Math.abs(dV) <= 1e-12 * Ta) return freeSpanResult(t, Ta, V, L)
  }
  return null
}

function freeSpanResult(t: SpanTarget, Ta: number, V: number, L: number): FreeSpan {
  const H = Math.sqrt(Ta * Ta - V * V)
  const s = segmentTangent(H, V, L, t.EA, t.w, scratch[0])
  // Differentiate both residuals and H^2 + V^2 = Ta^2 by Ta: H' = (Ta - V V')/H.
  const gx = ((s.xH + t.give) * Ta) / H
  const gz = (s.zH * Ta) / H
  const a = s.xV - ((s.xH + t.give) * V) / H
  const c = s.zV - (s.zH * V) / H
  const det = a * s.zL - s.xL * c
  const dL = -(a * gz - c * gx) / det
  return { H, V, L, Ta, Tb: s.Tb, dL }
}

/** A point load on a span: P down at distance X1 from the first head and X2 from the second, X1 + X2 = X. */
export interface LoadedTarget {
  X1: number
  X2: number
  Z: number
  EA: number
  w: number
  /** 1/K and H0/K of the first and of the second head; 0 where rigid. */
  give: [number, number]
  giveAt: [number, number]
}

/** A loaded span; derivatives by H and by P. `first` and `second` are its two catenary segments. */
export interface LoadedSpan {
  V: number
  L1: number
  L2: number
  first: SegmentTangent
  second: SegmentTangent
  /** Derivatives [by H, by P]. */
  dV: [number, number]
  dL1: [number, number]
  dL2: [number, number]
}

const blankLoaded = (): LoadedSpan => ({
  V: Number.NaN,
  L1: Number.NaN,
  L2: Number.NaN,
  first: blankTangent(),
  second: blankTangent(),
  dV: [Number.NaN, Number.NaN],
  dL1: [Number.NaN, Number.NaN],
  dL2: [Number.NaN, Number.NaN],
})

/**
 * A loaded span of given horizontal force: unknown V, L1, L2; written into `into`, which may be the very span that it
 * starts from. Null where not converged.
 */
export function loadedSpan(
  t: LoadedTarget,
  H: number,
  P: number,
  start?: LoadedSpan,
  into?: LoadedSpan,
): LoadedSpan | null {
  const X = t.X1 + t.X2
  const zLoad = (P * t.X1 * t.X2) / (X * H)
  let L1 = start?.L1 ?? Math.hypot(t.X1, zLoad - (t.Z * t.X1) / X)
  let L2 = start?.L2 ?? Math.hypot(t.X2, zLoad + (t.Z * t.X2) / X)
  let V = start?.V ?? (P * t.X2) / X + (t.w * (L1 + L2)) / 2 - (H * t.Z) / X
  for (let i = 0; i < ROUNDS; i++) {
    const a = segmentTangent(H, V, L1, t.EA, t.w, scratch[0])
    const b = segmentTangent(H, a.E - P, L2, t.EA, t.w, scratch[1])
    const r1 = a.dx + t.give[0] * H - t.giveAt[0] - t.X1
    const r2 = b.dx + t.give[1] * H - t.giveAt[1] - t.X2
    const step = eliminate(a, b, t.w, -r1, -r2, t.Z - a.dz - b.dz)
    V += step[0]
    L1 = Math.max(L1 + step[1], L1 / 4)
    L2 = Math.max(L2 + step[2], L2 / 4)
    const small = Math.abs(step[1]) + Math.abs(step[2]) <= 1e-13 * X
    if (small && Math.abs(step[0]) <= 1e-12 * (a.Ta + P)) return loadedResult(t, H, V, L1, L2, P, into)
  }
  return null
}

/** Solves the three linearised closing conditions for the steps of V, L1, L2. */
function eliminate(
  a: SegmentTangent,
  b: SegmentTangent,
  w: number,
  g1: number,
  g2: number,
  gz: number,
): [number, number, number] {
  // Row 1: a.xV dV + a.xL dL1 = g1. The second segment starts at V - w L1 - P, so it feels dV - w dL1.
  const p = a.xV / a.xL
  const q = g1 / a.xL
  const lead = 1 + w * p
  const feel = -w * q
  // dL1 = q - p dV and (dV - w dL1) = lead dV + feel.
  const a11 = b.xV * lead
  const a21 = a.zV - a.zL * p + b.zV * lead
  const c1 = g2 - b.xV * feel
  const c2 = gz - a.zL * q - b.zV * feel
  const det = a11 * b.zL - b.xL * a21
  const dV = (c1 * b.zL - b.xL * c2) / det
  const dL2 = (a11 * c2 - a21 * c1) / det
  return [dV, q - p * dV, dL2]
}

function loadedResult(
  t: LoadedTarget,
  H: number,
  V: number,
  L1: number,
  L2: number,
  P: number,
  into: LoadedSpan = blankLoaded(),
): LoadedSpan {
  const first = segmentTangent(H, V, L1, t.EA, t.w, into.first)
  const second = segmentTangent(H, first.E - P, L2, t.EA, t.w, into.second)
  into.V = V
  into.L1 = L1
  into.L2 = L2
  const byH = eliminate(
    first,
    second,
    t.w,
    -(first.xH + t.give[0]),
    -(second.xH + t.give[1]),
    -first.zH - second.zH,
  )
  const byP = eliminate(first, second, t.w, 0, second.xV, second.zV)
  put(into, 0, byH)
  put(into, 1, byP)
  return into
}

/** The derivatives of V, L1 and L2 by H (0) or P (1). */
function put(into: LoadedSpan, by: 0 | 1, [dV, dL1, dL2]: [number, number, number]): void {
  into.dV[by] = dV
  into.dL1[by] = dL1
  into.dL2[by] = dL2
}
