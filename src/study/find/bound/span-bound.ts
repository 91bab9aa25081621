/**
 * The best that a span of a given length can do in any layout between given ends with given parts, by energy at the
 * line's own grip. What fails here fails in every layout that has such a span: falls in time and other corners only add
 * demands. Soundness: see rest.ts and bounded-law.ts; further
 *
 * - Line and connector stop a fall in series. If the rope hangs nowhere lower under any load, the fall is stopped
 *   nowhere lower: the integral of force over way reaches the energy sooner. So the `least` law bounds the depth.
 * - Under one load the tension is least by the `most` law, and it grows with the load. The load is at least the one at
 *   which the balance could close with the most of (P - W) d(P) and the least of the integral of d dP.
 */
import type { ConnectorPart, Worker } from '../../../plan/types'
import { type Faller, fallReach, type Give } from '../../../solver/fall-energy'
import { lawAt } from '../../../solver/line-law'
import { GRAVITY, type LineSet, lineSet } from '../../../solver/model'
import { fallerOf, usualLimit } from '../../energy-falls'
import type { LineInput } from '../../line-input'
import { type BoundedLaw, type BoundedSpan, boundedLaw, type Side } from './bounded-law'
import { restSupply } from './rest'

/** One worker's least depth at a place, as the room takes it. */
export interface LeastReach {
  worker: Worker
  connector: ConnectorPart
  end: 'low' | 'high'
  drop: number
  extension: number
  height: number
  freeFall: number
}

export interface SpanBound {
  /** Least of the greatest tension in the rope, N, and of the horizontal pull on the span's heads, N; null: not known. */
  tension: number | null
  pull: number | null
  /** Least of the tension at the absorber's end, N; null where not known or the absorber may lie elsewhere. */
  absorber: number | null
  /** At mid-span by the soft line; empty where not known. */
  reaches: LeastReach[]
}

/** A line between two ends with one choice of parts; its input has these two stanchions alone. */
export interface EndsModel {
  input: LineInput
  /** The longest span that a layout may have, horizontal, m. */
  longest: number
}

type Place = { X: number; at: number; rest: BoundedSpan['rest'] }

/** Bounds of spans between the ends of a model; `soft` and `stiff` sets are made ready once. */
export interface SpanBounds {
  /** At mid-span of a span of horizontal length X wherever it lies. */
  midSpan: (X: number) => SpanBound
  /** Least depths with the load anywhere in a span whose place in the line is known. */
  reaches: (place: Place) => LeastReach[]
}

function slopes(input: LineInput): { rise: number; run: number; climb: number } {
  const { x, z } = input.model
  const run = x[x.length - 1]! - x[0]!
  const height = z[z.length - 1]! - z[0]!
  const weight = input.model.massPerMetre * GRAVITY
  // The rope hangs a little below the heads too.
  return { rise: height / run, run, climb: weight * (Math.abs(height) + 0.05) }
}

export function spanBounds(model: EndsModel): SpanBounds {
  const { input } = model
  const { rise, run, climb } = slopes(input)
  const limit = usualLimit(input)
  const give = 1 / input.model.endStiffness[0] + 1 / input.model.endStiffness[1]
  const oneGive = 1 / Math.min(...input.model.endStiffness)
  const prepare = (name: 'soft' | 'stiff') => {
    const set = lineSet(input.model, name)
    return { set, supply: restSupply({ set, longest: model.longest, rise }) }
  }
  const ready = { soft: prepare('soft'), stiff: prepare('stiff') }
  const law = (name: 'soft' | 'stiff', side: Side, place: Place): BoundedLaw | null => {
    const { set, supply } = ready[name]
    const endForce = leastEndForce(set, model.longest, rise, climb)
    const { absorberAt } = input.model
    const Z = rise * place.X
    return boundedLaw(
      { set, grip: input.grip, Z, absorberAt, supply, give, oneGive, climb, endForce, ...place },
      side,
      limit,
    )
  }
  const lift = input.stanchions[0]!.part.height
  const reaches = (place: Place): LeastReach[] => {
    const least = law('soft', 'least', place)
    const most = needsRelative(input, lift) ? law('soft', 'most', { ...place, rest: run - place.X }) : null
    return least ? leastReaches(input, least, most, lift - rise * place.at) : []
  }
  const midSpan = (X: number): SpanBound => {
    const place = { X, at: X / 2, rest: Math.max(0, run - X) }
    const laws = { least: law('stiff', 'least', place), most: law('stiff', 'most', place) }
    const pulls =
      laws.least && laws.most ? leastPulls(input, laws.least, laws.most, lift - (rise * X) / 2) : null
    const absorber = pulls && input.grip === 'sliding' ? pulls.low - climb : null
    return { tension: pulls?.tension ?? null, pull: pulls?.pull ?? null, absorber, reaches: reaches(place) }
  }
  return { midSpan, reaches }
}

/** H of an end span under the installed pretension is at least this, N. */
function leastEndForce(set: LineSet, longest: number, rise: number, climb: number): number {
  const T = set.pretension - climb
  const sag = (set.weight * longest) ** 2 / (4 * set.pretension)
  return T / Math.hypot(1, rise) - sag
}

/** A retractable below the rope locks at a fixed way: there the drop counts from the own unloaded line. */
const needsRelative = (input: LineInput, lift: number): boolean =>
  input.workers.some((w) => w.connector.type === 'retractable' && w.worker.dRingHeight <= lift)

/** What the least law gives way; for falls counted from the own unloaded line that line may lie lower by `slack`. */
function leastGive(law: BoundedLaw, slack: number): Give {
  const limit = law.nodes[law.nodes.length - 1]!.P
  if (slack <= 0) return { at: (P) => lawAt(law, P), limit }
  let [low, high] = [0, limit]
  for (let i = 0; i < 40; i++) {
    const mid = (low + high) / 2
    if (lawAt(law, mid).d < slack) low = mid
    else high = mid
  }
  const start = lawAt(law, high).U
  return {
    at: (P) => {
      const { d, U } = lawAt(law, P)
      return d <= slack ? { d: 0, U: 0 } : { d: d - slack, U: U - start }
    },
    limit,
  }
}

const ENDS = ['low', 'high'] as const

/** `lift`: head of the span's start above the girder's top at the place, m. */
function leastReaches(
  input: LineInput,
  least: BoundedLaw,
  most: BoundedLaw | null,
  lift: number,
): LeastReach[] {
  const height = lift + least.height
  return input.workers.flatMap(({ worker, connector }) => {
    const relative = connector.type === 'retractable'
    if (relative && !most && worker.dRingHeight <= height) return []
    const slack = relative && most ? Math.max(0, least.height - most.height) : 0
    return ENDS.flatMap((end) => {
      const faller = fallerOf(worker, connector, end, height, input.line.workersAtOnce)
      const got = fallReach(faller, leastGive(least, slack))
      if (!got.ok) return []
      const { drop, extension } = got.value
      // A lanyard so short that it is slack above the rope starts from its own line too: nothing is claimed of it.
      if (!relative && faller.freeFall === 0) return []
      return [{ worker, connector, end, drop, extension, height, freeFall: faller.freeFall }]
    })
  })
}

interface LeastPulls {
  tension: number
  low: number
  pull: number
}

/** Least tension and pull over the crew, stiff line, high connector; null where a law does not reach. */
function leastPulls(input: LineInput, least: BoundedLaw, most: BoundedLaw, lift: number): LeastPulls | null {
  let best: LeastPulls | null = null
  for (const { worker, connector } of input.workers) {
    const faller = fallerOf(worker, connector, 'high', lift + least.height, input.line.workersAtOnce)
    const F = leastForce(faller, least, most)
    const state = F === null ? null : most.solve(faller.count * F)
    if (state && (!best || state.high * state.lever > best.tension)) {
      best = { tension: state.high * state.lever, low: state.low * state.lever, pull: state.H * state.lever }
    }
  }
  return best
}

/** The least force on one body with which a fall could be stopped, N; never above the plateau. */
function leastForce(f: Faller, least: BoundedLaw, most: BoundedLaw): number | null {
  const { stiffness: k, plateau } = f.connector
  const weight = f.mass * GRAVITY
  if (weight >= plateau || f.count * plateau > least.nodes[least.nodes.length - 1]!.P) return null
  const apart = Math.max(0, least.height - most.height)
  const surplus = (F: number): number => {
    const P = f.count * F
    const low = lawAt(least, P)
    const lowArea = Math.max(0, P * (low.d - apart) - low.U)
    const line = ((P - f.count * weight) * (lawAt(most, P).d + apart) - lowArea) / f.count
    return line + (F * F) / (2 * k) - weight * (f.freeFall + F / k)
  }
  if (surplus(plateau) < 0) return plateau
  let [low, high] = [weight, plateau]
  for (let i = 0; i < 50; i++) {
    const mid = (low + high) / 2
    if (surplus(mid) < 0) low = mid
    else high = mid
  }
  return low
}
