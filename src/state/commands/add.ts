import { produce } from 'immer'
import type { Plan } from '../../plan/types'
import { select } from '../actions'
import { tell } from '../ask'
import { newFault } from '../change'
import type { RefKind } from '../refs'
import { app } from '../store'

/** One edit that adds one thing and selects it; tells where it could not be added, or no plan could hold it. */
export function addAndSelect(
  kind: RefKind,
  label: string,
  add: (plan: Plan) => string | null,
  why?: string,
): string | null {
  let id: string | null = null
  const before = app.getState().plan
  const plan = produce(before, (draft) => {
    id = add(draft)
  })
  const fault = id === null ? null : newFault(before, plan)
  if (id === null || fault !== null) {
    const words = fault ? `It was not possible to ${label}: ${fault}.` : why
    tell(words ?? `It was not possible to ${label} there.`, 'look')
    return null
  }
  app.setState({ plan, edited: label })
  select({ kind, id })
  return id
}
