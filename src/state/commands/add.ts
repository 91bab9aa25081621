import type { Plan } from '../../plan/types'
import { select } from '../actions'
import { tell } from '../ask'
import { edit } from '../edit'
import type { RefKind } from '../refs'

/** One edit that adds one thing and selects it; tells where it could not be added. */
export function addAndSelect(
  kind: RefKind,
  label: string,
  add: (plan: Plan) => string | null,
  why?: string,
): string | null {
  let id: string | null = null
  edit(label, (draft) => {
    id = add(draft)
    return id !== null
  })
  if (id) select({ kind, id })
  else tell(why ?? `It was not possible to ${label} there.`, 'look')
  return id
}
