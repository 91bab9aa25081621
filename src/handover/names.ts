/** Names of the plan's things by id, for tables: the name where there is one, with the id. */
import type { Plan } from '../plan/types'

/** What an id stands for; an id that the plan does not have stands for itself. */
export function nameOf(plan: Plan, id: string): string {
  const named = [...plan.lines, ...plan.workers, ...plan.obstacles, ...plan.girders, ...plan.parts]
  const found = named.find((x) => x.id === id)
  return found && found.name !== id ? found.name : id
}

/** Line, girder or obstacle with its id in brackets where that differs from the name. */
export const nameWithId = (plan: Plan, id: string): string => {
  const name = nameOf(plan, id)
  return name === id ? id : `${name} (${id})`
}
