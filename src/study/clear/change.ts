/** Changes to a line that give a fall less room to need: each makes a new plan and leaves the old one alone. */
import { usedIds } from '../../plan/ids'
import type { ConnectorPart, Line, Plan, Stanchion } from '../../plan/types'

const replaced = (plan: Plan, line: Line): Plan => ({
  ...plan,
  lines: plan.lines.map((l) => (l.id === line.id ? line : l)),
})

/** An id that nothing in the plan has. */
function freeId(plan: Plan, stem: string): string {
  const taken = usedIds(plan)
  let n = 1
  while (taken.has(`${stem}${n}`)) n++
  return `${stem}${n}`
}

/** The span that holds a station: index of its first stanchion. */
export function spanOf(line: Line, station: number): number {
  const last = line.stanchions.length - 2
  let span = 0
  while (span < last && station > line.stanchions[span + 1]!.station) span++
  return span
}

/** Stations `more` equal parts would end at, moved to where the bracket meets the same loops as its neighbour's. */
function stationsBetween(plan: Plan, line: Line, span: number, more: number): number[] {
  const a = line.stanchions[span]!
  const b = line.stanchions[span + 1]!
  const girder = plan.girders.find((g) => g.id === line.girder)
  const row = girder?.loops.find((r) => Math.abs(r.offset - a.offset) <= 0.05)
  return Array.from({ length: more }, (_, i) => {
    const even = a.station + ((b.station - a.station) * (i + 1)) / (more + 1)
    if (!row) return even
    return a.station + Math.round((even - a.station) / row.spacing) * row.spacing
  })
}

/** The plan with `more` intermediate stanchions in one span; null where they would stand on one another. */
export function withStanchions(plan: Plan, line: Line, span: number, more: number): Plan | null {
  const a = line.stanchions[span]
  const b = line.stanchions[span + 1]
  if (!a || !b) return null
  const like = line.stanchions.find((s) => s.role === 'intermediate') ?? a
  let made = plan
  const added: Stanchion[] = []
  for (const station of stationsBetween(plan, line, span, more)) {
    const share = (station - a.station) / (b.station - a.station)
    const id = freeId(made, 'S')
    const stanchion: Stanchion = {
      ...like,
      id,
      role: 'intermediate',
      station,
      offset: a.offset + (b.offset - a.offset) * share,
    }
    added.push(stanchion)
    const own = made.lines.find((l) => l.id === line.id)!
    made = replaced(made, { ...own, stanchions: [...own.stanchions, stanchion] })
  }
  const all = [a, ...added, b]
  if (all.some((s, i) => i > 0 && s.station - all[i - 1]!.station < 0.6)) return null
  const stanchions = [...line.stanchions.slice(0, span + 1), ...added, ...line.stanchions.slice(span + 1)]
  return replaced(made, { ...line, stanchions })
}

/** The plan with no connector on the line longer than `length`, m: longer ones are replaced by parts of that length. */
export function withConnector(plan: Plan, line: Line, length: number): Plan {
  let made = plan
  const parts = new Map<string, string>()
  const workers = plan.workers.map((w) => {
    if (w.line !== line.id) return w
    const part = plan.parts.find((p): p is ConnectorPart => p.id === w.connector && p.kind === 'connector')
    if (!part || part.length <= length) return w
    const known = parts.get(part.id)
    if (known) return { ...w, connector: known }
    const id = freeId(made, `${part.id}-short-`)
    parts.set(part.id, id)
    made = { ...made, parts: [...made.parts, { ...part, id, name: `${part.name}, shorter`, length }] }
    return { ...w, connector: id }
  })
  return { ...made, workers }
}

/** The plan with another nominal pretension on the line, N. */
export const withPretension = (plan: Plan, line: Line, pretension: number): Plan =>
  replaced(plan, { ...line, pretension })

/** The longest connector of the line's crew, m; 0 without a crew. */
export const longestConnector = (plan: Plan, line: Line): number =>
  plan.workers.reduce((most, w) => {
    if (w.line !== line.id) return most
    const part = plan.parts.find((p) => p.id === w.connector)
    return part?.kind === 'connector' ? Math.max(most, part.length) : most
  }, 0)
