/** New ids and names: short, numbered on from what the plan has. */
import { usedIds } from '../../plan/ids'
import type { Plan } from '../../plan/types'

/** The next free id with a prefix, S1, S2 and so on; it is taken from then on where a set is handed in. */
export function newId(plan: Plan, prefix: string, taken: Set<string> = usedIds(plan)): string {
  let n = 1
  while (taken.has(`${prefix}${n}`)) n++
  taken.add(`${prefix}${n}`)
  return `${prefix}${n}`
}

/** A name that no sibling bears: "Deck", then "Deck 2"; after "Girder 2" comes "Girder 3". */
export function freeName(wanted: string, siblings: readonly { name: string }[]): string {
  const taken = new Set(siblings.map((s) => s.name))
  if (!taken.has(wanted)) return wanted
  const [, stem = wanted, number = '1'] = /^(.*\S) (\d{1,6})$/.exec(wanted) ?? []
  let n = Number(number) + 1
  while (taken.has(`${stem} ${n}`)) n++
  return `${stem} ${n}`
}
