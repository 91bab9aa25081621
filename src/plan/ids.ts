import type { Plan } from './types'

/** Every id of a plan, loop rows and records included. */
export function usedIds(plan: Plan): Set<string> {
  const ids = new Set<string>()
  const add = (list: readonly { id: string }[] | undefined): void => {
    for (const item of list ?? []) ids.add(item.id)
  }
  for (const list of [
    plan.girders,
    plan.decks,
    plan.lines,
    plan.workers,
    plan.obstacles,
    plan.parts,
    plan.records,
  ]) {
    add(list)
  }
  for (const g of plan.girders) add(g.loops)
  for (const l of plan.lines) {
    add(l.stanchions)
    add(l.tieBacks)
  }
  return ids
}

/** A new id: the prefix and the least number that is free, `S1`, `S2` and so on. Needs no clock and no chance. */
export function freshId(plan: Plan, prefix: string, also: Iterable<string> = []): string {
  const used = new Set([...usedIds(plan), ...also])
  for (let n = 1; ; n++) if (!used.has(`${prefix}${n}`)) return `${prefix}${n}`
}
