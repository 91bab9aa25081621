/** What the pretension lesson shows of a line that does not change while the hand turns the tensioner. */
import type { Line, Plan } from '../../plan/types'
import { lineInput } from '../line-input'
import { type PretensionState, pretensionAt, pretensionCurve } from './pretension'

export interface PretensionSetup {
  /** Longest span and height of its posts, m; D-ring over the feet, m; margin under the feet, m. */
  span: number
  height: number
  dRing: number
  marginBelow: number
  /** N */
  planned: number
  /** The line as planned, and the same without its absorber. */
  plannedState: PretensionState
  withAbsorber: PretensionState[]
  without: PretensionState[]
  /** The line has an absorber at all. */
  hasAbsorber: boolean
}

/** Takes up to a second: two curves of falls. */
export function pretensionSetup(plan: Plan, line: Line): PretensionSetup {
  const input = lineInput(plan, line)
  const { x } = input.geometry
  return {
    span: x.slice(1).reduce((most, v, i) => Math.max(most, v - x[i]!), 0),
    height: input.stanchions[0]!.part.height,
    dRing: input.workers[0]?.worker.dRingHeight ?? 1.5,
    marginBelow: plan.basis.marginBelow,
    planned: line.pretension,
    plannedState: pretensionAt(plan, line, line.pretension, true),
    withAbsorber: line.absorber ? pretensionCurve(plan, line, true) : [],
    without: pretensionCurve(plan, line, false),
    hasAbsorber: line.absorber !== null,
  }
}
