/**
 * What the unloaded rest of a sliding line gives to a loaded span, per metre, without knowing where the stanchions of
 * that rest stand. A span of length X hands over s(X; T) = f L(X; T0) - L(X; T) of rope when its tension goes from T0
 * (installed, times the thermal factor f) to T; per metre that is an elastic part, the same for all X, and a part from
 * its sag that goes with X^2 and has one sign for one T. So per metre it lies between that of a span of no length and
 * that of the longest span allowed, whatever the layout.
 */
import type { LineSet } from '../../../solver/model'
import { type FreeSpan, freeSpanAtTension } from '../../../solver/span'

/** Least and most unstretched rope that a metre of rest hands over at tension T, m. */
export interface Supply {
  least: number
  most: number
}

/**
 * Added on either side, m per metre: the tension differs along a sloped line by the rope's weight, and the sag's part
 * is not exactly a power of X. A hundred metres of rest make 0.1 mm of it.
 */
const SLACK = 1e-6

export interface RestLine {
  set: LineSet
  /** The longest span that a layout may have, horizontal, m. */
  longest: number
  /** Rise of the line per horizontal metre. */
  rise: number
}

/** Supply by tension at a rest's near end; null where a span that long cannot hang at that tension. */
export function restSupply(rest: RestLine): (T: number) => Supply | null {
  const { stiffness: EA, weight: w, pretension: T0, thermalFactor } = rest.set
  const target = { X: rest.longest, Z: rest.rise * rest.longest, EA, w, give: 0, giveAt: 0 }
  const chord = Math.hypot(1, rest.rise)
  const taut = (T: number): number => chord / (1 + T / EA)
  let warm: FreeSpan | undefined
  const sagging = (T: number): number | null => {
    const span = freeSpanAtTension(target, T, warm) ?? freeSpanAtTension(target, T)
    if (!span) return null
    warm = span
    return span.L / rest.longest
  }
  const installed = sagging(T0)
  return (T) => {
    const now = sagging(T)
    if (installed === null || now === null) return null
    const short = thermalFactor * taut(T0) - taut(T)
    const long = thermalFactor * installed - now
    return { least: Math.min(short, long) - SLACK, most: Math.max(short, long) + SLACK }
  }
}
