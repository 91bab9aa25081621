/** The falls in time that every plan gets (plan-format.md): mid-span of every span, four corners, every worker. */
import type { TimeFalls } from './line-study'

export interface TimeOptions {
  cancelled?: () => boolean
}

/** Studies the falls in time of a line. */
export const timeFallsOf =
  (_options: TimeOptions): TimeFalls =>
  () =>
    'the falls in time are still to be computed'
