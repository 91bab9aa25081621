/**
 * A fall by energy (mechanics section 4). n workers fall together at one station; what they lose in height goes into
 * the line and into their connectors:
 *
 *   n m g (h + d + e) = U(P) + n [ F^2/(2k) + Fp x ],   P = n F,   e = F/k + x,   F = Fp where x > 0
 */
import { type LineLaw, lawAt } from './line-law'
import { greatestTension, type LoadedChain } from './loaded'
import { type ConnectorLaw, GRAVITY, type Solved, solved, unsolved } from './model'

export interface Faller {
  /** kg */
  mass: number
  /** How many fall together. */
  count: number
  /** Free fall, m. */
  freeFall: number
  connector: ConnectorLaw
}

export interface EnergyFall {
  /** F on one body, N. */
  arrestForce: number
  /** e and x, m. */
  extension: number
  torn: number
  /** The connector has torn to its end. */
  ranOut: boolean
  /** d, m, down from the same set's own unloaded line. */
  drop: number
  /** U(P), J. */
  work: number
  /** The line at its lowest; null at a stanchion, where it does not move. */
  state: LoadedChain | null
  /** Greatest in the rope, N; null at a stanchion. */
  tension: number | null
}

/** What a line offers to a fall: d and U under load P (N). At a stanchion both are 0. */
export interface Give {
  at: (P: number) => { d: number; U: number } | null
  /** Greatest load that `at` knows. */
  limit: number
}

/** A point that does not move. */
export const RIGID: Give = { at: () => ({ d: 0, U: 0 }), limit: Number.POSITIVE_INFINITY }

/** A line's law as something to fall on; it knows nothing beyond its last load. */
export function giveOf(law: LineLaw): Give {
  const limit = law.nodes[law.nodes.length - 1]!.P
  return { at: (P) => (P <= limit * (1 + 1e-9) ? lawAt(law, P) : null), limit }
}

/** Free fall h, m, from the rope's height above the walking surface. */
export function freeFall(
  type: 'lanyard' | 'retractable',
  length: number,
  dRing: number,
  height: number,
): number {
  return type === 'lanyard' ? Math.max(0, length + dRing - height) : length + Math.max(0, dRing - height)
}

/** Energy left over at force F with torn length x: positive once the fall has been taken up. */
function surplus(f: Faller, give: Give, F: number, x: number): number {
  const at = give.at(f.count * F)
  if (!at) return Number.NaN
  const { stiffness: k, plateau } = f.connector
  const stored = (F * F) / (2 * k) + plateau * x
  return at.U / f.count + stored - f.mass * GRAVITY * (f.freeFall + at.d + F / k + x)
}

/** The greatest force that a fall can need: all of the fall taken elastically by the connector alone, doubled. */
export function forceBound(f: Faller): number {
  const { stiffness: k, maxExtension, plateau } = f.connector
  const weight = f.mass * GRAVITY
  const height = f.freeFall + maxExtension
  return Math.max(plateau, weight + Math.sqrt(weight * weight + 2 * weight * k * height)) * 2
}

/** Halvings of a bracket: from any force down to the last bits of it. */
const HALVINGS = 60

/** Root of `surplus` in F between `low` (too little) and `high` (enough) by halving: it costs no line solve. */
function rootForce(f: Faller, give: Give, x: number, low: number, high: number): number | null {
  if (!(surplus(f, give, low, x) <= 0 && surplus(f, give, high, x) >= 0)) return null
  let [a, b] = [low, high]
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (a + b) / 2
    if (surplus(f, give, middle, x) < 0) a = middle
    else b = middle
  }
  return (a + b) / 2
}

/** Force and torn length that take up a fall; null where no bracket holds (the caller reports it). */
function balance(f: Faller, give: Give): { F: number; x: number; ranOut: boolean } | null {
  const { stiffness: k, plateau, maxExtension } = f.connector
  const weight = f.mass * GRAVITY
  const low = Math.min(weight, plateau)
  if (weight < plateau && surplus(f, give, plateau, 0) >= 0) {
    const F = rootForce(f, give, 0, low, plateau)
    return F === null ? null : { F, x: 0, ranOut: false }
  }
  const at = give.at(f.count * plateau)
  if (!at) return null
  const lack = weight * (f.freeFall + at.d + plateau / k) - at.U / f.count - plateau ** 2 / (2 * k)
  const x = weight < plateau ? lack / (plateau - weight) : Number.POSITIVE_INFINITY
  if (x < maxExtension) return { F: plateau, x, ranOut: false }
  let high = Math.min(Math.max(plateau, weight) * 1.5, give.limit / f.count)
  while (surplus(f, give, high, maxExtension) < 0) {
    if (high >= give.limit / f.count) return null
    high = Math.min(high * 1.5, give.limit / f.count)
  }
  const F = rootForce(f, give, maxExtension, Math.max(plateau, low), high)
  return F === null ? null : { F, x: maxExtension, ranOut: true }
}

/** What the room needs of a fall: how far the line drops and how far the connector gives. */
export interface FallReach {
  arrestForce: number
  drop: number
  extension: number
}

/** The reach of a fall from the law's nodes alone (d to about 1e-6 m, without another solve). */
export function fallReach(f: Faller, give: Give): Solved<FallReach> {
  const found = balance(f, give)
  const at = found && give.at(f.count * found.F)
  if (!found || !at) return unsolved(withInputs(f, `no balance below ${give.limit.toFixed(0)} N`))
  const extension = found.F / f.connector.stiffness + found.x
  return solved({ arrestForce: found.F, drop: at.d, extension })
}

/** A fall on a line at the station of `law`. Beyond the law's loads the fall is not computed. */
export function fallOnLine(f: Faller, law: LineLaw): Solved<EnergyFall> {
  const found = balance(f, giveOf(law))
  if (!found) return unsolved(withInputs(f, `no balance below ${giveOf(law).limit.toFixed(0)} N`))
  const P = f.count * found.F
  const state = law.solve(P)
  if (!state) return unsolved(withInputs(f, `the line did not converge under ${P.toFixed(0)} N`))
  return solved({
    arrestForce: found.F,
    extension: found.F / f.connector.stiffness + found.x,
    torn: found.x,
    ranOut: found.ranOut,
    drop: law.height - state.height,
    work: lawAt(law, P).U,
    state,
    tension: greatestTension(state),
  })
}

/** A fall beside a stanchion, where the line does not move: it tears the connector most. */
export function fallAtStanchion(f: Faller): Solved<EnergyFall> {
  const found = balance(f, RIGID)
  if (!found) return unsolved(withInputs(f, 'no balance on a rigid point'))
  const extension = found.F / f.connector.stiffness + found.x
  return solved({
    arrestForce: found.F,
    extension,
    torn: found.x,
    ranOut: found.ranOut,
    drop: 0,
    work: 0,
    state: null,
    tension: null,
  })
}

const withInputs = (f: Faller, why: string): string =>
  `${why}: ${f.count} x ${f.mass} kg, free fall ${f.freeFall.toFixed(3)} m, connector ${f.connector.stiffness} N/m up to ${f.connector.plateau} N, then ${f.connector.maxExtension} m`
