/**
 * What the window shows of lines that a newer plan has left as they were: kept, so that nothing is drawn anew for them,
 * and a surface made with care at rest does not give way to a quick one.
 */
import type { Line, Plan } from '../../plan/types'

/** Whether a line's study can't have changed between two plans: everything it depends on is the very same object. */
export function sameLine(was: Plan | null, now: Plan, id: string): boolean {
  if (!was) return false
  const [a, b] = [lineIn(was, id), lineIn(now, id)]
  return (
    a !== undefined &&
    a === b &&
    was.parts === now.parts &&
    was.workers === now.workers &&
    was.basis === now.basis &&
    was.decks === now.decks &&
    girderOf(was, a) === girderOf(now, b)
  )
}

const lineIn = (plan: Plan, id: string): Line | undefined => plan.lines.find((l) => l.id === id)

const girderOf = (plan: Plan, line: Line) => plan.girders.find((g) => g.id === line.girder)

/** What came for the plan `now`, but where its line is as it was in `was`, what was shown then. */
export function keepShown<T>(
  shown: readonly T[],
  was: Plan | null,
  came: readonly T[],
  now: Plan,
  lineOf: (thing: T) => string,
): T[] {
  const kept = new Map(shown.map((thing) => [lineOf(thing), thing]))
  return came.map((thing) => {
    const id = lineOf(thing)
    return (sameLine(was, now, id) && kept.get(id)) || thing
  })
}

/** What came, but the very object that was shown where one of the same key says the same. */
export function keepEqual<T extends object>(
  shown: readonly T[],
  came: readonly T[],
  keyOf: (thing: T) => string,
): T[] {
  const kept = new Map(shown.map((thing) => [keyOf(thing), thing]))
  return came.map((thing) => {
    const was = kept.get(keyOf(thing))
    return was && JSON.stringify(was) === JSON.stringify(thing) ? was : thing
  })
}
