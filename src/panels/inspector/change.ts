/**
 * Changes one thing of the plan that is found by its reference; the label is what Undo will tell. What would make the plan
 * one that could not be opened again is refused with the word why.
 */
import { produce } from 'immer'
import { planFaults } from '../../plan/read'
import { edit } from '../../state/edit'
import { type Found, type Ref, resolveRef } from '../../state/refs'
import { app } from '../../state/store'

type Of<K extends Found['kind']> = Extract<Found, { kind: K }>

export function change<K extends Found['kind']>(
  kind: K,
  id: string,
  label: string,
  recipe: (found: Of<K>) => void,
): string | null {
  const before = app.getState().plan
  const apply = (draft: typeof before): void => {
    const found = resolveRef(draft, { kind, id } as Ref)
    if (found?.kind === kind) recipe(found as Of<K>)
  }
  const told = new Set(planFaults(before).map((f) => f.message))
  const fault = planFaults(produce(before, apply)).find((f) => !told.has(f.message))
  if (fault) return fault.message
  edit(label, apply)
  return null
}
