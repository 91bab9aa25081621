/** From a layout to a plan: the line with its stanchions, tie-backs and parts as the layout says. */
import { freshId } from '../../plan/ids'
import type { Girder, Line, Plan, Stanchion, TieBack, Worker } from '../../plan/types'
import type { Choice, Feet, Layout } from './types'

/** What every stanchion of the new line is like. */
export interface Pattern {
  stanchion: Stanchion
  tieBackPart: string | null
}

/** The plan with this line alone: its own gaps and findings, not those of its neighbours. */
export function aloneWith(plan: Plan, line: Line): Plan {
  return { ...plan, lines: [line], workers: plan.workers.filter((w) => w.line === line.id) }
}

const withConnector = (workers: Worker[], line: string, connector: string | null): Worker[] =>
  connector === null ? workers : workers.map((w) => (w.line === line ? { ...w, connector } : w))

/** The plan with a choice of parts for one line. */
function withChoice(plan: Plan, lineId: string, choice: Choice): Plan {
  const { absorber, connector, pretension } = choice
  return {
    ...plan,
    lines: plan.lines.map((l) => (l.id === lineId ? { ...l, absorber, pretension } : l)),
    workers: withConnector(plan.workers, lineId, connector),
  }
}

/** The plan with a layout for one line; ids of stanchions and tie-backs are kept as far as there are any. */
export function withLayout(plan: Plan, lineId: string, pattern: Pattern, layout: Layout): Plan {
  const chosen = withChoice(plan, lineId, layout.choice)
  const line = chosen.lines.find((l) => l.id === lineId)
  if (!line) return plan
  const taken: string[] = []
  const fresh = (prefix: string): string => {
    const id = freshId(plan, prefix, taken)
    taken.push(id)
    return id
  }
  const ids = (have: string[], count: number, prefix: string): string[] =>
    Array.from({ length: count }, (_, i) => have[i] ?? fresh(prefix))
  const names = ids(
    line.stanchions.map((s) => s.id),
    layout.stations.length,
    'S',
  )
  const stanchions = layout.stations.map(
    (station, i): Stanchion => ({
      ...pattern.stanchion,
      id: names[i]!,
      role: i === 0 || i === layout.stations.length - 1 ? 'end' : 'intermediate',
      station,
    }),
  )
  const tieBacks =
    pattern.tieBackPart === null ? [] : tieBacksOf(line, stanchions, pattern.tieBackPart, layout.feet, ids)
  const made: Line = { ...line, stanchions, tieBacks }
  return { ...chosen, lines: chosen.lines.map((l) => (l.id === lineId ? made : l)) }
}

function tieBacksOf(
  line: Line,
  stanchions: Stanchion[],
  part: string,
  feet: [Feet, Feet],
  ids: (have: string[], count: number, prefix: string) => string[],
): TieBack[] {
  const names = ids(
    line.tieBacks.map((t) => t.id),
    2,
    'T',
  )
  const ends = [stanchions[0]!, stanchions[stanchions.length - 1]!]
  return ends.map((s, i) => ({ id: names[i]!, stanchion: s.id, part, ...feet[i]! }))
}

/** The girder of a line. `readPlan` has refused plans with dangling references. */
export function girderOf(plan: Plan, line: Line): Girder {
  const girder = plan.girders.find((g) => g.id === line.girder)
  if (!girder) throw new Error(`girder ${line.girder} is missing: the plan was not read through readPlan`)
  return girder
}
