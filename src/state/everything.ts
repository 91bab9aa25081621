import type { Plan } from '../plan/types'
import type { Ref } from './refs'

/** References to all that can be selected on the site and the rig, in the order of the outline. */
export function everything(plan: Plan): Ref[] {
  const refs = (kind: Ref['kind'], list: readonly { id: string }[] = []): Ref[] =>
    list.map(({ id }) => ({ kind, id }))
  return [
    ...refs('girder', plan.girders),
    ...refs('deck', plan.decks),
    ...refs('line', plan.lines),
    ...refs('worker', plan.workers),
    ...refs('obstacle', plan.obstacles),
  ]
}
