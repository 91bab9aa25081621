import type { Plan } from '../../plan/types'

/** One change to a line that might clear an obstacle, computed. */
export interface ClearWay {
  kind: 'stanchions' | 'connector' | 'pretension'
  /** How much: stanchions more; the longest connector, m; the least pretension, N. */
  value: number
  /** What it is now, in the same unit. */
  from: number
  /** Gap of the obstacle then, m, its margin and what falls in time add taken off. */
  gap: number
  /** It clears the obstacle. False: the most of this kind that was tried does not. */
  clears: boolean
  /** Rules that hold now and would fail then, of any line or worker. */
  alsoFails: { rule: string; subject: string }[]
  /** The plan with the change made. */
  plan: Plan
}

export interface ClearTask {
  plan: Plan
  obstacle: string
  line: string
}
