/** The outline as data: groups of rows with their depth, filtered by what is searched for. */

import { rowUnder } from '../../geometry/loops'
import type { Girder, Line, Plan } from '../../plan/types'
import { formatLength, formatMass, type UnitSystem } from '../../plan/units'
import { girderLength } from '../../state/edits/gaps'
import { footLoop } from '../../state/edits/tie-back-edits'
import { type Ref, refKey } from '../../state/refs'

export interface TreeRow {
  ref: Ref
  key: string
  name: string
  /** A quiet word at the end of the row. */
  detail: string
  depth: number
  /** Rows may be folded away under this one. */
  folds: boolean
}

export interface TreeGroup {
  id: 'girders' | 'lines' | 'crew' | 'below' | 'decks'
  title: string
  count: number
  /** Command that adds one. */
  add: string
  rows: TreeRow[]
}

const row = (ref: Ref, name: string, detail: string, depth: number, folds = false): TreeRow => ({
  ref,
  key: refKey(ref),
  name,
  detail,
  depth,
  folds,
})

export function outlineGroups(plan: Plan, units: UnitSystem, search: string): TreeGroup[] {
  const groups: TreeGroup[] = [
    group(
      'girders',
      'Girders',
      'site.drawGirder',
      plan.girders.length,
      plan.girders.flatMap((g) => girderRows(g, units)),
    ),
    group(
      'lines',
      'Lines',
      'rig.drawLine',
      plan.lines.length,
      plan.lines.flatMap((l) => lineRows(plan, l, units)),
    ),
    group('crew', 'Crew', 'rig.addWorker', plan.workers.length, crewRows(plan, units)),
    group('below', 'Below and around', 'site.addBox', plan.obstacles.length, obstacleRows(plan)),
  ]
  const decks = plan.decks ?? []
  if (decks.length > 0) {
    const rows = decks.map((d) => row({ kind: 'deck', id: d.id }, d.name || d.id, '', 1))
    groups.splice(1, 0, group('decks', 'Decks', 'site.drawDeck', decks.length, rows))
  }
  return search.trim() === '' ? groups : groups.map((g) => found(g, search.trim().toLowerCase()))
}

const group = (
  id: TreeGroup['id'],
  title: string,
  add: string,
  count: number,
  rows: TreeRow[],
): TreeGroup => ({
  id,
  title,
  count,
  add,
  rows,
})

const found = (g: TreeGroup, word: string): TreeGroup => ({
  ...g,
  rows: g.rows.filter((r) => `${r.name} ${r.ref.id} ${r.detail}`.toLowerCase().includes(word)),
})

function girderRows(girder: Girder, units: UnitSystem): TreeRow[] {
  const head = row(
    { kind: 'girder', id: girder.id },
    girder.name || girder.id,
    formatLength(girderLength(girder), units),
    1,
    true,
  )
  const rows = girder.loops.map((r) =>
    row({ kind: 'loop-row', id: r.id }, 'Loops', `${r.count} at ${formatLength(r.spacing, units)}`, 2),
  )
  return [head, ...rows]
}

function lineRows(plan: Plan, line: Line, units: UnitSystem): TreeRow[] {
  const girder = plan.girders.find((g) => g.id === line.girder)
  const head = row(
    { kind: 'line', id: line.id },
    line.name || line.id,
    `on ${girder?.name ?? line.girder}`,
    1,
    true,
  )
  const posts = line.stanchions.flatMap((s) => {
    const detail =
      s.role === 'end' ? `end, ${formatLength(s.station, units)}` : formatLength(s.station, units)
    const ties = line.tieBacks.filter((t) => t.stanchion === s.id)
    return [
      row({ kind: 'stanchion', id: s.id }, s.id, between(girder, s) || detail, 2),
      ...ties.map((t) => {
        const loops = `loops ${footLoop(t, 'strap').index + 1}, ${footLoop(t, 'tensioner').index + 1}`
        return row({ kind: 'tie-back', id: t.id }, t.id, loops, 3)
      }),
    ]
  })
  return [head, ...posts]
}

/** "end, loops 7-8": where a crew finds it. */
function between(girder: Girder | undefined, s: Line['stanchions'][number]): string {
  const loops = girder && rowUnder(girder, s.offset)
  if (!loops) return ''
  const place = (s.station - loops.first) / loops.spacing
  const before = Math.floor(place + 1e-6) + 1
  if (before < 1 || before >= loops.count) return ''
  const words =
    Math.abs(place - Math.round(place)) < 0.02
      ? `on loop ${Math.round(place) + 1}`
      : `loops ${before}-${before + 1}`
  return s.role === 'end' ? `end, ${words}` : words
}

const crewRows = (plan: Plan, units: UnitSystem): TreeRow[] =>
  plan.workers.map((w) => {
    const line = plan.lines.find((l) => l.id === w.line)
    return row(
      { kind: 'worker', id: w.id },
      w.name || w.id,
      `${formatMass(w.mass, units)}, ${line?.name ?? 'no line'}`,
      1,
    )
  })

const obstacleRows = (plan: Plan): TreeRow[] =>
  plan.obstacles.map((o) => row({ kind: 'obstacle', id: o.id }, o.name || o.id, '', 1))
