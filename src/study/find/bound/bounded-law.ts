/**
 * The line law of one span whose rest is only bounded (see rest.ts). More rope from the rest lowers the root H of the
 * rope balance at every load: the span hangs lower and its tension is less. So the law with the `least` supply lies
 * nowhere below the span of any layout, and the law with the `most` supply has nowhere more tension.
 */
import type { Grip } from '../../../plan/types'
import { addedRope } from '../../../solver/absorber'
import { type LawKnot, nextKnot } from '../../../solver/line-law'
import type { LineSet } from '../../../solver/model'
import { freeSpanAtTension, type LoadedSpan, loadedSpan } from '../../../solver/span'
import type { Supply } from './rest'

export type Side = 'least' | 'most'

export interface BoundedSpan {
  set: LineSet
  grip: Grip
  /** Horizontal length and rise of the span, and where the load hangs from its first head, m. */
  X: number
  Z: number
  at: number
  /** Horizontal metres of line beside it: in all where its place is not known. */
  rest: number | { left: number; right: number }
  absorberAt: 'start' | 'end'
  supply: (T: number) => Supply | null
  /** 1/K of both ends of the line together, m/N. */
  give: number
  /** The greater of the two alone. */
  oneGive: number
  /** Weight of rope between the highest and the lowest point of the line, N: tension differs by no more along it. */
  climb: number
  /** Least horizontal force at which the end heads stand as measured, N. */
  endForce: number
}

export interface BoundedState {
  P: number
  H: number
  at: LoadedSpan
  height: number
  /** Greatest and least tension at the ends of the loaded span, N. */
  high: number
  low: number
  /** Tension at which the absorber is taken to be, N. */
  absorberAt: number
  /** Forces of a span at an end of the line may be less by this factor (see leverage). */
  lever: number
}

export interface BoundedLaw {
  height: number
  nodes: LawKnot[]
  solve: (P: number) => BoundedState | null
}

/**
 * Where an end head gives, the loaded span itself grows shorter by its way s: at the same depth H is less by s over the
 * nearer part of the span at most, and so are the tension and what it draws from elsewhere. 1 where both ends of the
 * span are known to be intermediate stanchions.
 */
function leverage(b: BoundedSpan, high: number): number {
  const inner = typeof b.rest !== 'number' && b.rest.left > 0 && b.rest.right > 0
  const whole = b.rest === 0 || (typeof b.rest !== 'number' && b.rest.left + b.rest.right === 0)
  const way = inner ? 0 : Math.max(0, high - b.endForce) * (whole ? b.give : b.oneGive)
  return Math.max(0, 1 - way / Math.min(b.at, b.X - b.at))
}

/** Rope that the give of the end heads frees, m. `T` bounds the pull of an end span from the side that counts. */
function freedByHeads(b: BoundedSpan, side: Side, H: number, high: number): number {
  if (b.grip === 'held' && side === 'least') return 0
  const pull = side === 'least' ? H - b.set.pretension - b.climb : high - b.endForce
  // Under load the rope meets an end head at an angle: the head's way counts by its cosine, H/T, at least.
  const share = pull > 0 === (side === 'least') ? (H / high) * (1 - (2 * high) / b.set.stiffness) : 1
  return pull * b.give * share
}

function fromRest(
  b: BoundedSpan,
  side: Side,
  at: LoadedSpan,
  high: number,
  low: number,
  by: number,
): number | null {
  if (b.grip === 'held') return 0
  if (typeof b.rest === 'number') {
    const supply = b.supply(side === 'least' ? low : high)
    return supply && supply[side] * b.rest
  }
  const left = b.rest.left > 0 ? b.supply(at.first.Ta * by) : { least: 0, most: 0 }
  const right = b.rest.right > 0 ? b.supply(at.second.Tb * by) : { least: 0, most: 0 }
  return left && right && left[side] * b.rest.left + right[side] * b.rest.right
}

/** The tension at the absorber's end from the side that counts, N. */
function absorberTension(
  b: BoundedSpan,
  side: Side,
  at: LoadedSpan,
  high: number,
  low: number,
  by: number,
): number {
  if (b.grip === 'held' && side === 'least') return 0
  const known = typeof b.rest !== 'number'
  const end = by * (b.absorberAt === 'start' ? at.first.Ta : at.second.Tb)
  return side === 'least' ? (known ? end : low) - b.climb : (known ? end : high) + b.climb
}

interface Balance {
  F: number
  at: LoadedSpan
  high: number
  low: number
  absorberAt: number
  lever: number
}

/** Makes the solver of one side: H such that the span's rope is its own and what the rest hands over. */
function boundedSolver(b: BoundedSpan, side: Side): ((P: number, H: number) => BoundedState | null) | null {
  const { stiffness: EA, weight: w, pretension } = b.set
  const T0 = pretension + (side === 'least' ? b.climb : -b.climb)
  const span = freeSpanAtTension({ X: b.X, Z: b.Z, EA, w, give: 0, giveAt: 0 }, T0)
  if (!span) return null
  const own = span.L * b.set.thermalFactor
  const target = { X1: b.at, X2: b.X - b.at, Z: b.Z, EA, w, give: [0, 0], giveAt: [0, 0] } as const
  let warm: LoadedSpan | undefined
  const balance = (H: number, P: number): Balance | null => {
    const goal = { ...target, give: [0, 0] as [number, number], giveAt: [0, 0] as [number, number] }
    const at = loadedSpan(goal, H, P, warm) ?? loadedSpan(goal, H, P)
    if (!at) return null
    warm = at
    const high = Math.max(at.first.Ta, at.second.Tb)
    const low = Math.min(at.first.Ta, at.second.Tb)
    const lever = leverage(b, high)
    // A held rope draws nothing from elsewhere, and a head that gives only lets it hang lower.
    const by = side === 'least' && b.grip !== 'held' ? lever : 1
    const rest = fromRest(b, side, at, high * by, low * by, by)
    if (rest === null) return null
    const absorberAt = absorberTension(b, side, at, high * by, low * by, by)
    const added = addedRope(b.set.absorber, absorberAt, EA).rope
    const stretched = own * (1 - (high * (1 - by)) / EA)
    const rope = stretched + rest + freedByHeads(b, side, H * by, high) + added
    return { F: at.L1 + at.L2 - rope, at, high, low, absorberAt, lever }
  }
  return (P, guess) => {
    const root = fallingRoot((H) => balance(H, P), guess, 1e-11 * b.X)
    if (!root) return null
    const { at, high, low, absorberAt, lever } = root.value
    return { P, H: root.H, at, height: at.first.dz, high, low, absorberAt, lever }
  }
}

/**
 * Root of a balance that falls with H: a bracket grows from the guess, then regula falsi with halved ends (Illinois),
 * with a bisection now and then. Null: none found.
 */
function fallingRoot(
  f: (H: number) => Balance | null,
  guess: number,
  close: number,
): { H: number; value: Balance } | null {
  let low = 0
  let high = Number.POSITIVE_INFINITY
  let fLow = Number.NaN
  let fHigh = Number.NaN
  let side = 0
  let H = guess
  let stride = 0.002
  for (let i = 0; i < 120; i++) {
    const value = f(H)
    if (value && Math.abs(value.F) <= close) return { H, value }
    if (!value || value.F > 0) {
      if (side === 1) fHigh /= 2
      low = H
      fLow = value?.F ?? Number.NaN
      side = 1
    } else {
      if (side === -1) fLow /= 2
      high = H
      fHigh = value.F
      side = -1
    }
    if (value && high < Number.POSITIVE_INFINITY && high - low <= 1e-12 * high) return { H, value }
    if (high === Number.POSITIVE_INFINITY) H *= 1 + stride
    else if (low === 0) H /= 1 + stride
    else {
      const cut = low + (fLow * (high - low)) / (fLow - fHigh)
      H = cut > low && cut < high && i % 8 !== 7 ? cut : (low + high) / 2
    }
    stride = Math.min(4 * stride, 0.6)
  }
  return null
}

/** Loads of a law and how they are graded, as in line-law.ts. */
const NODES = 20
const GRADING = 1.8

/** The law of one side up to load `limit`, N; null where it could not be solved throughout. */
export function boundedLaw(b: BoundedSpan, side: Side, limit: number): BoundedLaw | null {
  const solve = boundedSolver(b, side)
  const zero = solve?.(0, b.set.pretension)
  if (!solve || !zero) return null
  const states = [zero]
  const kinks = new Map<BoundedState, BoundedState>()
  for (let j = 1; j <= NODES; j++) {
    const P = limit * (j / NODES) ** GRADING
    const last = states[states.length - 1]!
    const next = solve(P, ahead(states, P))
    if (!next) return null
    for (const T of b.set.absorber ? [b.set.absorber.onset, b.set.absorber.full] : []) {
      if (!(last.absorberAt < T && next.absorberAt > T)) continue
      const kink = kinkAt(solve, states[states.length - 1]!, next, T)
      if (!kink) return null
      states.push(kink[0])
      kinks.set(kink[0], kink[1])
    }
    states.push(next)
  }
  const exact = (P: number): BoundedState | null => solve(P, nearest(states, P).H)
  return { height: zero.height, nodes: knots(states, kinks, solve, zero.height), solve: exact }
}

function nearest(states: BoundedState[], P: number): BoundedState {
  return states.reduce((a, b) => (Math.abs(b.P - P) < Math.abs(a.P - P) ? b : a))
}

/** H at load P as the last two states let expect it. */
function ahead(states: BoundedState[], P: number): number {
  const last = states[states.length - 1]!
  const before = states[states.length - 2]
  if (!before || !(last.P > before.P)) return last.H * 1.05
  return Math.max(last.H, last.H + ((last.H - before.H) * (P - last.P)) / (last.P - before.P))
}

/** States just before and just past the load at which the absorber's tension passes its onset or full extension. */
function kinkAt(
  solve: (P: number, H: number) => BoundedState | null,
  from: BoundedState,
  to: BoundedState,
  T: number,
): [BoundedState, BoundedState] | null {
  let [low, high] = [from, to]
  for (let i = 0; i < 60 && high.P - low.P > 1e-7 * high.P; i++) {
    const wide = high.P - low.P
    const share = (T - low.absorberAt) / (high.absorberAt - low.absorberAt)
    // The cut goes a little beyond the kink on the side that is farther from it, so that both ends close in.
    const nudge = share < 0.5 ? share + 0.02 : share - 0.02
    const cut = i % 3 === 2 ? 0.5 : i % 3 === 1 ? nudge : share
    const P = low.P + wide * Math.min(0.999, Math.max(0.001, cut))
    const mid = solve(P, low.H + (high.H - low.H) * ((P - low.P) / wide))
    if (!mid) return null
    if (mid.absorberAt < T) low = mid
    else high = mid
  }
  return [low, high]
}

/** Knots with slopes by a small step of load, downwards and upwards, so that a kink keeps both. */
function knots(
  states: BoundedState[],
  kinks: Map<BoundedState, BoundedState>,
  solve: (P: number, H: number) => BoundedState | null,
  height: number,
): LawKnot[] {
  const slope = (s: BoundedState, step: number): number => {
    const near = solve(Math.max(0, s.P + step), s.H)
    return near && near.P !== s.P ? -(near.height - s.height) / (near.P - s.P) : Number.NaN
  }
  const out: LawKnot[] = [{ P: 0, d: 0, below: 0, above: slope(states[0]!, 1), U: 0 }]
  for (const s of states.slice(1)) {
    const step = 1e-4 * s.P
    const past = kinks.get(s)
    const below = slope(s, -step)
    const knot = nextKnot(out[out.length - 1]!, s.P, height - s.height, below)
    out.push({ ...knot, above: past ? slope(past, step) : below })
  }
  return out
}
