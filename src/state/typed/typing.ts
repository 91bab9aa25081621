/** Opens the figures of a thing, to be typed where it stands. */
import type { Ref } from '../refs'
import { type AppState, app } from '../store'
import { typedValues } from './values'

/** What has a handle that is not locked. */
export const canType = (s: Pick<AppState, 'plan' | 'locked'>, ref: Ref | undefined): boolean =>
  ref !== undefined && !s.locked.includes(ref.id) && typedValues(s.plan, ref).length > 0

/** `at`: where it was asked for, px in the window. `point`: the end of a girder, the corner of a deck. */
export function typeBeside(ref: Ref, at: { x: number; y: number } | null = null, point?: number): void {
  if (!canType(app.getState(), ref)) return
  app.setState({ typing: { ref, at, ...(point === undefined ? {} : { point }) } })
}
