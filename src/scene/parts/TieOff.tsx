/** Where one can tie off, drawn on the walking surfaces while the Clashes view asks for it. */
import { reachAreas, tieOffStore } from '../../state/clashes/tie-off'
import { useApp } from '../../state/store'
import { ReachMap } from '../play/ReachMap'

export function TieOff() {
  const shown = tieOffStore((s) => s.shown)
  const view = useApp((s) => s.view)
  const plan = useApp((s) => s.plan)
  return shown && view === 'clashes' ? <ReachMap patches={reachAreas(plan)} /> : null
}
