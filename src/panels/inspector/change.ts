/** Changes one thing of the plan that is found by its reference; the label is what Undo will tell. */
import { edit } from '../../state/edit'
import { type Found, type Ref, resolveRef } from '../../state/refs'

type Of<K extends Found['kind']> = Extract<Found, { kind: K }>

export function change<K extends Found['kind']>(
  kind: K,
  id: string,
  label: string,
  recipe: (found: Of<K>) => void,
): null {
  edit(label, (draft) => {
    const ref = { kind, id } as Ref
    const found = resolveRef(draft, ref)
    if (found?.kind === kind) recipe(found as Of<K>)
  })
  return null
}
