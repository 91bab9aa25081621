/**
 * How the plan changes: `edit` for one step, a gesture for a drag. Either way one entry in history, with a label that the
 * undo command tells.
 */
import { produce } from 'immer'
import type { Plan } from '../plan/types'
import { pruneWindow } from './prune'
import { app, history } from './store'

/** A recipe changes a draft of the plan. Where it changes nothing, or gives back false, nothing happens. */
export type Recipe = (plan: Plan) => unknown

/** One change, one entry; `label` in the words that "Undo" will tell, such as "move S2". */
export function edit(label: string, recipe: Recipe): void {
  const before = app.getState().plan
  let refused = false
  const plan = produce(before, (draft) => {
    refused = recipe(draft) === false
  })
  if (refused || plan === before) return
  app.setState({ plan, edited: label })
}

let before: { plan: Plan; edited: string } | null = null

/** From here to `endGesture` all edits make one entry. */
export function beginGesture(label: string): void {
  if (before) endGesture()
  const { plan, edited } = app.getState()
  before = { plan, edited }
  history().pause()
  app.setState({ gesture: label })
}

/** Ends it; the plan as it is now becomes one entry, none where nothing changed. */
export function endGesture(): void {
  if (!before) return
  const start = before
  before = null
  const { plan, gesture } = app.getState()
  if (plan !== start.plan) {
    const { pastStates } = history()
    app.temporal.setState({ pastStates: [...pastStates, start], futureStates: [] })
    app.setState({ edited: gesture ?? '' })
  }
  app.setState({ gesture: null })
  history().resume()
}

/** Back to the plan at `beginGesture`; history as if nothing had happened. */
export function cancelGesture(): void {
  if (!before) return
  app.setState({ ...before, gesture: null })
  before = null
  history().resume()
}

export const inGesture = (): boolean => before !== null

export function undo(): void {
  cancelGesture()
  history().undo()
  pruneWindow()
}

export function redo(): void {
  cancelGesture()
  history().redo()
  pruneWindow()
}
