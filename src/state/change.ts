/**
 * Changes one thing of the plan that is found by its reference; the label is what Undo will tell. What would make the plan
 * one that could not be opened again is refused with the word why.
 */
import { produce } from 'immer'
import { planFaults } from '../plan/read'
import type { Deck, Plan } from '../plan/types'
import { edit } from './edit'
import { type Found, type Ref, resolveRef } from './refs'
import { app } from './store'
import { outlineFault } from './tables/point-table'

type Of<K extends Found['kind']> = Extract<Found, { kind: K }>

export function change<K extends Found['kind']>(
  kind: K,
  id: string,
  label: string,
  recipe: (found: Of<K>) => void,
): string | null {
  return tryEdit(label, (draft) => {
    const found = resolveRef(draft, { kind, id } as Ref)
    if (found?.kind === kind) recipe(found as Of<K>)
  })
}

/** One change, one entry; nothing and the word why where the plan would have a fault that it does not have now. */
export function tryEdit(label: string, recipe: (draft: Plan) => void): string | null {
  const before = app.getState().plan
  const why = newFault(before, produce(before, recipe))
  if (why === null) edit(label, recipe)
  return why
}

/** The first fault of a plan that the one before did not have; null where there is none. */
export function newFault(before: Plan, next: Plan): string | null {
  for (const deck of next.decks ?? []) {
    const why = outlineFault(deck.outline)
    if (why !== null && !wasFaulty(before, deck)) return why
  }
  const told = new Set(planFaults(before).map((f) => f.message))
  return planFaults(next).find((f) => !told.has(f.message))?.message ?? null
}

function wasFaulty(before: Plan, { id }: Deck): boolean {
  const outline = before.decks?.find((d) => d.id === id)?.outline
  return outline !== undefined && outlineFault(outline) !== null
}
