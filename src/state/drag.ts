/** What scene and tape call while something is dragged: begin, move as often as the pointer does, end or cancel. */
import { produce } from 'immer'
import type { Plan } from '../plan/types'
import { beginGesture, cancelGesture, endGesture } from './edit'
import { tieBackIn } from './edits/lookup'
import { moveStanchion } from './edits/stanchion-edits'
import { footLoop, moveFoot } from './edits/tie-back-edits'
import type { Ref } from './refs'
import { app } from './store'

export interface DragKeys {
  /** Anywhere, not only between loops (Alt). */
  free?: boolean
  /** Tie-back feet go along (Shift). */
  together?: boolean
}

let start: Plan | null = null

/** Whether a thing may be dragged now: not locked. */
export const canDrag = (ref: Ref): boolean => !app.getState().locked.includes(ref.id)

export function beginDrag(ref: Ref): void {
  start = app.getState().plan
  beginGesture(ref.kind === 'tie-back' ? `move a foot of ${ref.id}` : `move ${ref.id}`)
}

/**
 * Moves a stanchion or the foot of a tie-back to a station, always from the plan as it was at the start of the drag, so
 * that going there and back leaves nothing behind. Returns what held it back, for the label at the pointer.
 */
export function dragTo(ref: Ref, station: number, keys: DragKeys = {}, offset?: number): string | null {
  if (!start) return null
  let held: string | null = null
  const plan = produce(start, (draft) => {
    if (ref.kind === 'stanchion') {
      const options = { free: keys.free ?? false, withTieBacks: keys.together ?? false }
      held = moveStanchion(draft, ref.id, station, options)?.held ?? null
    } else if (ref.kind === 'tie-back' && ref.foot) {
      moveFoot(draft, ref.id, ref.foot, station, offset)
    } else if (ref.kind === 'tie-back') {
      moveBothFeet(draft, ref.id, station)
    }
  })
  if (plan !== app.getState().plan) app.setState({ plan })
  return held
}

function moveBothFeet(draft: Plan, id: string, station: number): void {
  const at = tieBackIn(draft, id)
  const row = at?.girder.loops.find((r) => r.id === at.tieBack.strapLoop.row)
  if (!at || !row) return
  const apart = footLoop(at.tieBack, 'tensioner').index - footLoop(at.tieBack, 'strap').index
  const index = moveFoot(draft, id, 'strap', station)
  if (index !== null) at.tieBack.tensionerLoop.index = Math.min(row.count - 1, Math.max(0, index + apart))
}

export function endDrag(): void {
  start = null
  endGesture()
}

export function cancelDrag(): void {
  start = null
  cancelGesture()
}
