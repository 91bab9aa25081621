import { current, isDraft } from 'immer'

/** A copy of its own, also of a thing in a draft. */
export const copied = <T>(item: T): T =>
  structuredClone(isDraft(item) ? (current(item as object) as T) : item)
