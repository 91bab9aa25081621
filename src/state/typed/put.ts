/** Typed places: each one entry in history, or the word why it is refused; the plan stays as it was then. */
import type { Vec3 } from '../../plan/types'
import { formatLength } from '../../plan/units'
import { tryEdit } from '../change'
import { edit } from '../edit'
import { girderLength } from '../edits/gaps'
import { LEAST_GIRDER } from '../edits/girder-edits'
import { stanchionIn } from '../edits/lookup'
import { moveStanchion } from '../edits/stanchion-edits'
import { type Foot, setFootLoop } from '../edits/tie-back-edits'
import { moveRefs, pointsOf, putPoint } from '../edits/transform'
import type { Ref } from '../refs'
import { app } from '../store'

/** A typed station, m, stands where it was typed; past a neighbour or off the girder is refused. */
export function typeStation(id: string, station: number): string | null {
  const { plan, units } = app.getState()
  const at = stanchionIn(plan, id)
  if (!at) return 'the stanchion is no longer there'
  const [before, after] = [at.line.stanchions[at.index - 1], at.line.stanchions[at.index + 1]]
  if (station < 0 || station > girderLength(at.girder))
    return `the girder runs from 0 to ${formatLength(girderLength(at.girder), units)}`
  if (before && station <= before.station)
    return `${before.id} stands at ${formatLength(before.station, units)}`
  if (after && station >= after.station) return `${after.id} stands at ${formatLength(after.station, units)}`
  edit(`move ${id}`, (draft) => void moveStanchion(draft, id, station, { free: true }))
  return null
}

/** Puts a foot on the loop of its row that has this number, as people count, from 1. */
export function typeLoop(id: string, foot: Foot, number: number): string | null {
  let done = false
  edit(`move a foot of ${id}`, (plan) => {
    done = setFootLoop(plan, id, foot, number)
  })
  return done ? null : 'the row has no such loop'
}

/** Puts one end of a girder or one corner of a deck at a point, m. */
export function typePoint(ref: Ref, index: number, at: Vec3): string | null {
  const points = pointsOf(app.getState().plan, ref)
  const other = points[1 - index]
  const short =
    ref.kind === 'girder' && other && Math.hypot(at[0] - other[0], at[1] - other[1]) < LEAST_GIRDER
  if (short) return 'the girder would be too short'
  const what = ref.kind === 'deck' ? 'a corner' : index === 0 ? 'the start' : 'the end'
  return tryEdit(`move ${what} of ${ref.id}`, (draft) => putPoint(draft, ref, index, at))
}

/** Moves a whole thing so that the first of its points comes to stand at `at`, m. */
export function typePlace(ref: Ref, at: Vec3): string | null {
  const from = pointsOf(app.getState().plan, ref)[0]
  if (!from) return 'it is no longer there'
  const by = at.map((v, i) => v - (from[i] ?? 0)) as Vec3
  return tryEdit(`move ${ref.id}`, (draft) => void moveRefs(draft, [ref], by))
}
