/** The arrow keys: selected stanchions and tie-back feet go one loop on or back; what stands freely goes a grid step. */
import { tell } from './ask'
import { edit } from './edit'
import { nudgeStanchion } from './edits/stanchion-edits'
import { nudgeFoot } from './edits/tie-back-edits'
import { moveSelectionBy } from './selection-edits'
import { app } from './store'

export function step(direction: 1 | -1): void {
  const { selection, locked } = app.getState()
  const onLine = selection.filter(
    (r) => (r.kind === 'stanchion' || r.kind === 'tie-back') && !locked.includes(r.id),
  )
  if (onLine.length === 0) {
    moveSelectionBy(direction, 0)
    return
  }
  const ordered = direction > 0 ? [...onLine].reverse() : onLine
  let held: string | null = null
  edit(`nudge ${onLine.length === 1 ? onLine[0]?.id : `${onLine.length} things`}`, (draft) => {
    for (const ref of ordered) {
      if (ref.kind === 'stanchion') held = nudgeStanchion(draft, ref.id, direction)?.held ?? held
      else if (ref.foot) nudgeFoot(draft, ref.id, ref.foot, direction)
      else for (const foot of FEET) nudgeFoot(draft, ref.id, foot, direction)
    }
  })
  if (held) tell(`No further: ${held}.`, 'look')
}

const FEET = ['strap', 'tensioner'] as const
