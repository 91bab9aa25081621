import type { Part, PartKind, PartOf, Plan } from './types'

/** The item with an id, or undefined. */
function byId<T extends { id: string }>(list: readonly T[], id: string): T | undefined {
  return list.find((item) => item.id === id)
}

/** The plan's part with an id, if it is of the kind; undefined where there is none. */
export function findPart<K extends PartKind>(plan: Plan, id: string, kind: K): PartOf<K> | undefined {
  const part = byId<Part>(plan.parts, id)
  return part?.kind === kind ? (part as PartOf<K>) : undefined
}
