/**
 * The line law (mechanics section 3): how far a set's line drops at a station under a load P there, d(P), and the work
 * that takes, U(P) = integral of P dd at the fixed station. The law is solved exactly at graded loads; between them
 * d(P) is the cubic through both ends' values and slopes, and the absorber's onset and full extension are nodes of
 * their own, for d(P) has kinks there.
 */

import type { UnloadedLine } from './installed'
import { type LoadedChain, type LoadedStart, solveLoadedChain } from './loaded'
import { type Solved, solved, unsolved } from './model'

/** One solved point of a law d(P), with the work up to it. */
export interface LawKnot {
  P: number
  /** Drop from the same set's own unloaded line, m. */
  d: number
  /** dd/dP just below and just above P, m/N (they differ only at a kink). */
  below: number
  above: number
  /** Work done so far, J. */
  U: number
}

export interface LawNode extends LawKnot {
  state: LoadedChain
}

export interface LineLaw {
  /** Which span the station lies in, and the horizontal distance from that span's first head, m. */
  span: number
  at: number
  /** Height of the unloaded line above that head, m. */
  height: number
  nodes: LawNode[]
  /** The exact law at any P beyond the nodes too. */
  solve: (P: number) => LoadedChain | null
}

/** Loads per law; with the grading below U is exact to about 1e-6 (see line-law.test.ts). */
const NODES = 20
/** The law is steepest at the start: loads grow as a power of their number. */
const GRADING = 1.8

/** The knot after `last` at P with drop d and slope, the work being that of the cubic: U = [P d] - integral of d dP. */
export function nextKnot(last: LawKnot, P: number, d: number, slope: number): LawKnot {
  const h = P - last.P
  const area = (h * (last.d + d)) / 2 + (h * h * (last.above - slope)) / 12
  return { P, d, below: slope, above: slope, U: last.U + P * d - last.P * last.d - area }
}

function append(nodes: LawNode[], state: LoadedChain, height: number): void {
  const { P, d, below, above, U } = nextKnot(
    nodes[nodes.length - 1]!,
    state.P,
    height - state.height,
    -state.heightSlope,
  )
  nodes.push({ P, d, below, above, U, state })
}

const startFrom = (s: LoadedChain, P: number): LoadedStart => ({
  H: Math.max(s.H + s.forceSlope * (P - s.P), s.H / 2),
  at: s.at,
  others: s.others,
})

/** The loads at which the absorber starts to give or has run out, between two solved loads. */
function kinkBetween(
  from: LoadedChain,
  to: LoadedChain,
  tension: number,
  solve: (P: number, start: LoadedStart) => LoadedChain | null,
): LoadedChain | null {
  let low = from
  let high = to
  for (let i = 0; i < 80; i++) {
    // Below the kink the tension is smooth in P: Newton from there, and halving where that leaves the bracket.
    const newton = low.P + (tension - low.endTension) / low.endTensionSlope
    const P = i % 3 < 2 && newton > low.P && newton < high.P ? newton : (low.P + high.P) / 2
    const mid = solve(P, startFrom(low, P))
    if (!mid) return null
    if (Math.abs(mid.endTension - tension) <= 1e-9 * tension) return mid
    if (mid.endTension < tension) low = mid
    else high = mid
    if (high.P - low.P <= 1e-10 * high.P) return mid
  }
  return null
}

/**
 * The law of an unloaded line at horizontal distance `at` from the first head of span `span`, up to load `limit` (N).
 * At a stanchion (at = 0 or the whole span) the caller takes d = 0 instead; the law needs a point within the span.
 * `count` loads are solved: with fewer the work between them is less exact, the law's `solve` never.
 */
export function lineLaw(
  line: UnloadedLine,
  span: number,
  at: number,
  limit: number,
  count = NODES,
): Solved<LineLaw> {
  const chain = line.chains[line.grip === 'sliding' ? 0 : span]!
  const index = line.grip === 'sliding' ? span : 0
  const solve = (P: number, start: LoadedStart): LoadedChain | null =>
    solveLoadedChain(chain, index, at, P, start)
  const others = line.grip === 'sliding' ? line.spans.map((s, i) => (i === span ? undefined : s)) : []
  const zero = solve(0, { H: line.spans[span]!.H, others })
  if (!zero) return unsolved(`the unloaded ${line.set.name} line did not converge in span ${span + 1}`)
  const height = zero.height
  const slope = -zero.heightSlope
  const nodes: LawNode[] = [{ P: 0, d: 0, below: slope, above: slope, U: 0, state: zero }]
  const law = chain.absorber
  const kinks = law ? [law.onset, law.full] : []
  for (let j = 1; j <= count; j++) {
    const P = limit * (j / count) ** GRADING
    const last = nodes[nodes.length - 1]!.state
    const next = solve(P, startFrom(last, P)) ?? solve(P, { H: last.H, others })
    if (!next)
      return unsolved(
        `the ${line.set.name} line did not converge under ${P.toFixed(0)} N in span ${span + 1}`,
      )
    for (const tension of kinks) {
      if (last.endTension >= tension || next.endTension <= tension) continue
      const kink = kinkBetween(nodes[nodes.length - 1]!.state, next, tension, solve)
      if (kink) appendKink(nodes, kink, height, solve)
    }
    append(nodes, next, height)
  }
  const exact = (P: number): LoadedChain | null => {
    const near = nearest(nodes, P).state
    return solve(P, startFrom(near, P)) ?? solve(P, { H: near.H, others })
  }
  return solved({ span, at, height, nodes, solve: exact })
}

/** A node at a kink: its slope below comes from just before it, its slope above from just past it. */
function appendKink(
  nodes: LawNode[],
  kink: LoadedChain,
  height: number,
  solve: (P: number, start: LoadedStart) => LoadedChain | null,
): void {
  const off = 1e-6 * kink.P
  const before = solve(kink.P - off, startFrom(kink, kink.P - off))
  const past = solve(kink.P + off, startFrom(kink, kink.P + off))
  append(nodes, before ? { ...kink, heightSlope: before.heightSlope } : kink, height)
  const node = nodes[nodes.length - 1]!
  if (past) node.above = -past.heightSlope
}

function nearest(nodes: LawNode[], P: number): LawNode {
  let best = nodes[0]!
  for (const n of nodes) if (n.P <= P) best = n
  return best
}

export interface LawPoint {
  d: number
  U: number
}

/** d and U at load P from the nodes alone; P within the law's limit. */
export function lawAt(law: { nodes: readonly LawKnot[] }, P: number): LawPoint {
  const nodes = law.nodes
  let i = 1
  while (i < nodes.length - 1 && nodes[i]!.P < P) i++
  const a = nodes[i - 1]!
  const b = nodes[i]!
  const h = b.P - a.P
  const t = (P - a.P) / h
  const d = hermite(t, h, a.d, b.d, a.above, b.below)
  const area = hermiteArea(t, h, a.d, b.d, a.above, b.below)
  return { d, U: a.U + P * d - a.P * a.d - area }
}

/** The cubic at t in 0..1 over an interval h with end values and slopes. */
function hermite(t: number, h: number, y0: number, y1: number, m0: number, m1: number): number {
  const s = 1 - t
  return s * s * (1 + 2 * t) * y0 + t * t * (3 - 2 * t) * y1 + h * t * s * (s * m0 - t * m1)
}

/** Integral of that cubic from 0 to t, times h. */
function hermiteArea(t: number, h: number, y0: number, y1: number, m0: number, m1: number): number {
  const t2 = t * t
  const t3 = t2 * t
  const t4 = t2 * t2
  const a = t - t3 + t4 / 2
  const b = t3 - t4 / 2
  const c = t2 / 2 - (2 * t3) / 3 + t4 / 4
  const e = t4 / 4 - t3 / 3
  return h * (a * y0 + b * y1 + h * (c * m0 + e * m1))
}
