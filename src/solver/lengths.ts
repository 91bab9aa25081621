/**
 * Rope and strap lengths for the crew (mechanics section 9). The chain from one end stanchion to the other is
 * anchor, clamp, rope, eye, tensioner with its strap, absorber, anchor. SI units.
 */

/** Constructional stretch of a new steel-core rope where the part says nothing, fraction (mechanics section 9). */
export const CONSTRUCTIONAL_STRETCH = 0.003

export interface TakeUpFigures {
  /** T, nominal pretension, N. */
  tension: number
  /** S, unstretched length of the whole chain between the end stanchions, m. */
  freeLength: number
  /** EA, mean of its ends, N. */
  axialStiffness: number
  /** c, fraction. */
  constructionalStretch: number
  spans: { length: number; sag: number }[]
  /** K of the first and last head along the line, N/m. */
  endStiffness: [number, number]
}

export interface TakeUp {
  elastic: number
  constructional: number
  sag: number
  heads: number
  total: number
}

/**
 * What tensioning takes up, m: T S/EA + c S + sum of 8 sag^2/(3 span) + T (1/K0 + 1/Kn). Null where a figure makes no
 * length (a stiffness or span that is not positive, anything not finite).
 */
export function takeUp(f: TakeUpFigures): TakeUp | null {
  const divisors = [f.axialStiffness, ...f.endStiffness, ...f.spans.map((s) => s.length)]
  if (!divisors.every((x) => x > 0)) return null
  const elastic = (f.tension * f.freeLength) / f.axialStiffness
  const constructional = f.constructionalStretch * f.freeLength
  const sag = f.spans.reduce((total, s) => total + (8 * s.sag * s.sag) / (3 * s.length), 0)
  const heads = f.tension * (1 / f.endStiffness[0] + 1 / f.endStiffness[1])
  const total = elastic + constructional + sag + heads
  return Number.isFinite(total) ? { elastic, constructional, sag, heads, total } : null
}

/** Eye to its end stanchion before tensioning, m: absorber length + hardware length + take-up. */
export const eyeOffset = (absorberLength: number, hardwareLength: number, take: number): number =>
  absorberLength + hardwareLength + take

/**
 * Where the crew marks the rope for its clamp, m from the eye along the new, unloaded rope: its unstretched length in
 * the line less the constructional stretch c S that a new rope still gains under load. Null where nothing is left.
 */
export function clampMark(wireRopeLength: number, constructional: number): number | null {
  const mark = wireRopeLength - constructional
  return mark > 0 ? mark : null
}

/** Tail left beyond the clamp when the rope is cut, m: an allowance of ours, told on the sheet. */
export const ROPE_TAIL = 1

/** Length to cut, m: from the eye to the clamp's mark, and a tail beyond it. */
export const ropeCutLength = (mark: number, tail = ROPE_TAIL): number => mark + tail

export interface StrapFigures {
  /** Head to loop, each leg, m. */
  legs: number[]
  /** Length of the strap, m. */
  partLength: number
  /** One turn on the ratchet's spool, m. */
  wrapLength: number
}

export interface StrapLengths {
  /** Legs and one full turn on the spool, m. */
  needed: number
  /** Part less needed: left over after one turn, m; negative: too short. */
  left: number
  /** Turns on the spool if all that is left beyond the legs is wound on; null where a turn has no length. */
  turns: number | null
}

/** Strap needed for two legs and one turn, what is left of it, and the turns it makes (mechanics section 9). */
export function strapLengths(f: StrapFigures): StrapLengths {
  const legs = f.legs.reduce((total, l) => total + l, 0)
  const needed = legs + f.wrapLength
  return {
    needed,
    left: f.partLength - needed,
    turns: f.wrapLength > 0 ? Math.max(0, (f.partLength - legs) / f.wrapLength) : null,
  }
}

/** Torque of the clamp's bolts, tightened evenly in a pattern. Common practice, no source. */
export const CLAMP_TORQUE = { newtonMetres: 47, poundFeet: 35, source: 'common practice' } as const
