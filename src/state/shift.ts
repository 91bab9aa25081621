/** Moving what stands about in plan, by hand: all that is selected together, and the end points of one thing. */
import { produce } from 'immer'
import type { Plan, Vec3 } from '../plan/types'
import { newFault } from './change'
import { beginGesture, cancelGesture, endGesture } from './edit'
import { moveRefs, pointsOf, putPoint } from './edits/transform'
import { hasRef, type Ref } from './refs'
import { app } from './store'
import { snapPoint } from './tools/snap'

/** Steps of what is dragged, m: 5 cm or 2 in. */
const DRAG_STEP = { si: 0.05, us: 0.0508 } as const

/** A moved corner takes the place of one that stands still within this, m. */
const CORNER_REACH = 0.3

let start: Plan | null = null

/** What the bridge itself is made of is moved in Site only: elsewhere a hand that turns the picture must not shift it. */
const movable = ({ kind }: Ref): boolean =>
  kind === 'obstacle' || ((kind === 'girder' || kind === 'deck') && app.getState().view === 'site')

/** What goes along when `ref` is taken: everything selected that has a place of its own and is not locked; empty: nothing. */
export function takenWith(ref: Ref): Ref[] {
  const { selection, locked } = app.getState()
  if (!movable(ref) || locked.includes(ref.id) || !hasRef(selection, ref)) return []
  return selection.filter((r) => movable(r) && !locked.includes(r.id))
}

export function beginShift(label: string): void {
  start = app.getState().plan
  beginGesture(label)
}

/** Shows the plan as it was at the start with these things moved by whole steps, m, or so that corners meet. */
export function shiftTo(refs: readonly Ref[], by: Vec3): void {
  if (!start) return
  const step = DRAG_STEP[app.getState().units]
  const stepped = by.map((m) => Math.round(m / step) * step) as Vec3
  const met = meeting(start, refs, by) ?? stepped
  show(produce(start, (draft) => void moveRefs(draft, refs, met)))
}

/** The move near `by` that brings a corner of what moves onto one of what stands; null where none is near. */
function meeting(plan: Plan, refs: readonly Ref[], by: Vec3): Vec3 | null {
  if (by[2] !== 0) return null
  const all: Ref[] = [
    ...plan.girders.map(({ id }): Ref => ({ kind: 'girder', id })),
    ...(plan.decks ?? []).map(({ id }): Ref => ({ kind: 'deck', id })),
  ]
  const corners = (list: readonly Ref[]): Vec3[] =>
    list.flatMap((ref) => (ref.kind === 'obstacle' ? [] : pointsOf(plan, ref)))
  const standing = corners(all.filter((ref) => !hasRef(refs, ref)))
  let best: Vec3 | null = null
  let least = CORNER_REACH
  for (const [x, y] of corners(refs)) {
    for (const [sx, sy] of standing) {
      const far = Math.hypot(sx - x - by[0], sy - y - by[1])
      if (far < least) [least, best] = [far, [sx - x, sy - y, 0]]
    }
  }
  return best
}

/**
 * Puts one end of a girder or one corner of a deck somewhere: onto other ends, with Shift at a right angle, on the grid,
 * with Alt anywhere. What the plan could not be is not done; gives back the word why.
 */
export function pointTo(
  ref: Ref,
  index: number,
  at: Vec3,
  keys: { shift?: boolean; alt?: boolean },
): string | null {
  const from = start
  if (!from) return null
  const points = pointsOf(from, ref)
  const [own, before] = [points[index], points[(index + points.length - 1) % points.length]]
  if (!own || !before) return null
  const others = { ...from, girders: from.girders.filter((g) => g.id !== ref.id) }
  const [x, y] = snapPoint(others, [before], at, keys)
  const next = produce(from, (draft) => putPoint(draft, ref, index, [x, y, own[2]]))
  const why = newFault(from, next)
  if (why === null) show(next)
  return why
}

function show(plan: Plan): void {
  if (plan !== app.getState().plan) app.setState({ plan })
}

export function endShift(): void {
  start = null
  endGesture()
}

export function cancelShift(): void {
  start = null
  cancelGesture()
}
