/** The gaps of the plan as a list to go through: worst first, filtered by line, by what it is, by how near. */
import type { Plan } from '../../plan/types'
import type { ObstacleResult, Results } from '../../study/results'

export type Near = 'clashes' | 'near' | 'all'

export interface ClashFilter {
  line: string | null
  near: Near
  /** Part of an obstacle's name. */
  text: string
}

/** Gaps below this are near, m: about a body's width. */
export const NEAR = 0.6

export interface Clash {
  result: ObstacleResult
  name: string
  lineName: string
  workerName: string
  state: 'clash' | 'near' | 'clear' | 'beside' | 'unknown'
}

function stateOf(o: ObstacleResult): Clash['state'] {
  if (o.unknown !== undefined) return 'unknown'
  if (o.gap === null) return 'beside'
  return o.gap < 0 ? 'clash' : o.gap < NEAR ? 'near' : 'clear'
}

/** Clashes first, then what is not known, then by gap, then by distance beside. */
function rank({ result, state }: Clash): [number, number] {
  if (state === 'clash') return [0, result.gap ?? 0]
  if (state === 'unknown') return [1, 0]
  if (state === 'beside') return [3, result.horizontal ?? Number.MAX_VALUE]
  return [2, result.gap ?? 0]
}

/** Every obstacle and girder of the results, worst first. */
export function clashesOf(plan: Plan, results: Results | null): Clash[] {
  const nameIn = (list: { id: string; name: string }[], id: string | null | undefined): string =>
    id ? (list.find((i) => i.id === id)?.name ?? id) : ''
  return (results?.obstacles ?? [])
    .map(
      (result): Clash => ({
        result,
        name: nameIn([...plan.obstacles, ...plan.girders], result.id),
        lineName: nameIn(plan.lines, result.line),
        workerName: nameIn(plan.workers, result.worker),
        state: stateOf(result),
      }),
    )
    .sort((a, b) => {
      const [ra, rb] = [rank(a), rank(b)]
      return ra[0] - rb[0] || ra[1] - rb[1]
    })
}

/** What of the list a filter lets through. What is not known is never filtered away by nearness. */
export const filtered = (list: Clash[], filter: ClashFilter): Clash[] =>
  list.filter(
    (c) =>
      (filter.line === null || c.result.line === filter.line || c.result.line === null) &&
      (filter.near === 'all' ||
        c.state === 'unknown' ||
        c.state === 'clash' ||
        (filter.near === 'near' && c.state === 'near')) &&
      c.name.toLowerCase().includes(filter.text.trim().toLowerCase()),
  )
