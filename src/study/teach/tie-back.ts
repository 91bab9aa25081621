/** The tie-back's foot as something to grab: what each part carries against the angle from the vertical. */
import { degrees } from '../../geometry/vec'
import { type HeadSupport, headStiffness, shareHeadPull } from '../../solver/end-stanchion'

export interface TieBackLesson {
  /** Head pull T, N, height h, m, ks, N/m, strap stiffness s, N per unit strain. */
  pull: number
  height: number
  headStiffness: number
  strapStiffness: number
}

export interface TieBackState {
  /** From the vertical, degrees, of both legs alike, and the foot's distance along the girder, m. */
  angle: number
  foot: number
  /** In one leg, in both along their slope, in the shaft along the line, down the shaft; N. */
  leg: number
  legs: number
  shaft: number
  axial: number
  /** Movement of the head towards the line, m. */
  movement: number
  /** The closed form with legs taking it all: T/sin(angle), N. */
  allLegs: number
}

const supportAt = (l: TieBackLesson, foot: number): HeadSupport => {
  const leg = { along: foot, across: 0, drop: l.height, stiffness: l.strapStiffness, slack: false }
  return { headStiffness: l.headStiffness, height: l.height, legs: [leg, leg] }
}

/** The state with both legs' feet `foot` m behind the stanchion. */
export function tieBackAt(l: TieBackLesson, foot: number): TieBackState {
  const support = supportAt(l, foot)
  const shares = shareHeadPull(support, l.pull, 0)
  const angle = degrees(Math.atan2(foot, l.height))
  const leg = shares.legs[0] ?? 0
  return {
    angle,
    foot,
    leg,
    legs: 2 * leg,
    shaft: shares.shaft,
    axial: shares.axial,
    movement: l.pull / headStiffness(support),
    allLegs: l.pull / Math.sin(Math.atan2(foot, l.height)),
  }
}

/** Foot distance for an angle from the vertical, m. */
export const footAt = (l: TieBackLesson, angle: number): number =>
  l.height * Math.tan((angle * Math.PI) / 180)

/** States from steep to flat, for the plot. */
export function tieBackCurve(l: TieBackLesson, from = 15, to = 70, steps = 56): TieBackState[] {
  return Array.from({ length: steps }, (_, i) =>
    tieBackAt(l, footAt(l, from + ((to - from) * i) / (steps - 1))),
  )
}

/** A plain sentence for a state; `limit` is the basis' least angle, degrees. */
export function tieBackSentence(s: TieBackState, pull: number, limit: number): string {
  const times = (s.legs / pull).toFixed(2)
  const down = (s.axial / pull).toFixed(2)
  const carried = `The two legs carry ${times} times the rope's pull, and push the stanchion down with ${down} times.`
  return s.angle < limit
    ? `Too steep: at ${s.angle.toFixed(1)} degrees from the vertical most of the strap's force goes into the girder. ${carried}`
    : `At ${s.angle.toFixed(1)} degrees the strap pulls back rather than down. ${carried}`
}
