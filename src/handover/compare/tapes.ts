/** Both states of a line as two tapes over the same stations, so that what moved stands above where it was. */
import { tape, tapeWindow } from '../../drawings/tape'
import type { Theme } from '../../drawings/theme'
import type { Window } from '../../drawings/view'
import type { Line } from '../../plan/types'
import type { Comparison, Studied } from './index'

export interface TapePair {
  line: string
  name: string
  before: ReturnType<typeof tape>
  after: ReturnType<typeof tape>
}

/** One pair for each line that both plans have and that a change or another number touches; ropes are left out. */
export function tapePairs(
  before: Studied,
  after: Studied,
  c: Comparison,
  size: { width: number; height: number; theme: Theme },
): TapePair[] {
  const touched = new Set([
    ...c.changes.flatMap((x) => (x.what === 'line' ? [x.id] : x.of ? [x.of] : [])),
    ...c.governing.map((x) => x.line),
  ])
  return after.plan.lines.flatMap((line) => {
    const was = before.plan.lines.find((l) => l.id === line.id)
    if (!was || !touched.has(line.id)) return []
    const stations = union(tapeWindow(before.plan, was), tapeWindow(after.plan, line))
    const moved = movedRefs(c, line.id)
    const one = (s: Studied, l: Line) =>
      tape(
        {
          plan: s.plan,
          line: l,
          results: s.results,
          rope: null,
          selected: moved,
          units: after.plan.units,
        },
        { ...size, stations },
      )
    return [{ line: line.id, name: line.name, before: one(before, was), after: one(after, line) }]
  })
}

const union = (a: Window, b: Window): Window => ({
  low: Math.min(a.low, b.low),
  high: Math.max(a.high, b.high),
})

/** What is drawn in the accent: stanchions and tie-backs that were added, removed or changed. */
function movedRefs(c: Comparison, line: string): Set<string> {
  return new Set(c.changes.filter((x) => x.of === line).map((x) => `${x.what}:${x.id}`))
}
