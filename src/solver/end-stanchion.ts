/**
 * An end stanchion with its tie-backs (mechanics section 6): the shaft bends, strap legs pull, and both share the
 * head's pull by stiffness along the line.
 *
 *   l = sqrt(a^2 + b^2 + h^2),  k = (s/l)(a/l)^2,  K = ks + sum k
 *   shaft = T ks/K,   leg = T (k/K)/(a/l),   axial = sum leg h/l + downward pull,   base moment = shaft x height
 */

/** A strap leg: distances along and across, drop (m), and its axial stiffness s, N per unit strain. */
export interface StrapLeg {
  along: number
  across: number
  drop: number
  stiffness: number
  /** Its foot is on the line's side or its loop is missing: it goes slack when the head is pulled. */
  slack: boolean
}

export interface HeadSupport {
  /** ks, N/m */
  headStiffness: number
  /** Height of the head above its base, m. */
  height: number
  legs: StrapLeg[]
}

/** k of one leg along the line, N/m; a slack leg, or one with its foot under the head, has none. */
export function legStiffness(leg: StrapLeg): number {
  if (leg.slack) return 0
  const l = Math.hypot(leg.along, leg.across, leg.drop)
  return (leg.stiffness / l) * (leg.along / l) ** 2
}

/** K of the head along the line, N/m. */
export const headStiffness = (s: HeadSupport): number =>
  s.legs.reduce((sum, leg) => sum + legStiffness(leg), s.headStiffness)

export interface HeadShares {
  shaft: number
  /** Force along each strap, N, in the order of the legs. */
  legs: number[]
  /** Downward force in the shaft, N. */
  axial: number
  baseMoment: number
  /** What the tie-back carries along its mean slope, T sum k/K over the mean of a/l, N; 0 without a tie-back. */
  tieBackForce: number
}

/** How a head's pull T (N, along the line) and downward pull (N) are carried. */
export function shareHeadPull(s: HeadSupport, T: number, down: number): HeadShares {
  const K = headStiffness(s)
  const shaft = (T * s.headStiffness) / K
  let axial = down
  let carried = 0
  let slopes = 0
  const legs = s.legs.map((leg) => {
    const l = Math.hypot(leg.along, leg.across, leg.drop)
    const k = legStiffness(leg)
    const force = k === 0 ? 0 : (T * k) / K / (leg.along / l)
    axial += (force * leg.drop) / l
    carried += (T * k) / K
    if (k > 0) slopes += leg.along / l
    return force
  })
  const working = s.legs.filter((leg) => legStiffness(leg) > 0).length
  const tieBackForce = working === 0 ? 0 : carried / (slopes / working)
  return { shaft, legs, axial, baseMoment: shaft * s.height, tieBackForce }
}
