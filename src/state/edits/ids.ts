/** New ids: short, numbered on from what the plan has, unique over the whole plan. */
import type { Plan } from '../../plan/types'

export function takenIds(plan: Plan): Set<string> {
  const ids = [
    ...plan.girders,
    ...(plan.decks ?? []),
    ...plan.lines,
    ...plan.workers,
    ...plan.obstacles,
    ...plan.parts,
  ]
  const taken = new Set(ids.map((item) => item.id))
  for (const girder of plan.girders) for (const row of girder.loops) taken.add(row.id)
  for (const line of plan.lines) for (const item of [...line.stanchions, ...line.tieBacks]) taken.add(item.id)
  for (const record of plan.records ?? []) taken.add(record.id)
  return taken
}

/** The next free id with a prefix: S1, S2 ... */
export function newId(plan: Plan, prefix: string, taken: Set<string> = takenIds(plan)): string {
  let n = 1
  while (taken.has(`${prefix}${n}`)) n++
  taken.add(`${prefix}${n}`)
  return `${prefix}${n}`
}

/** A name that no sibling bears: "Girder 2", "North box, copy". */
export function freeName(wanted: string, siblings: readonly { name: string }[]): string {
  if (!siblings.some((s) => s.name === wanted)) return wanted
  let n = 2
  while (siblings.some((s) => s.name === `${wanted} ${n}`)) n++
  return `${wanted} ${n}`
}
