/** After the plan changed: what the window points at but the plan no longer has is let go. */
import type { Plan } from '../plan/types'
import { type Ref, resolveRef } from './refs'
import { app } from './store'

const alive = (plan: Plan, ref: Ref): boolean =>
  ref.kind === 'part' ? plan.parts.some((p) => p.id === ref.id) : resolveRef(plan, ref) !== null

export function pruneWindow(): void {
  const { plan, selection, hover, tapeLine, typing } = app.getState()
  const kept = selection.filter((ref) => alive(plan, ref))
  if (kept.length !== selection.length) app.setState({ selection: kept })
  if (hover && !alive(plan, hover)) app.setState({ hover: null })
  if (typing && !alive(plan, typing.ref)) app.setState({ typing: null })
  if (!plan.lines.some((l) => l.id === tapeLine)) app.setState({ tapeLine: plan.lines[0]?.id ?? null })
}
