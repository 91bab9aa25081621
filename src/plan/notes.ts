/** What looks odd in a valid plan. None of it is refused; a person should know it before relying on a number. */
import type { Girder, Line, Plan } from './types'

export function planNotes(plan: Plan): string[] {
  return [
    ...sharedRowNotes(plan),
    ...plan.girders.flatMap(girderNotes),
    ...plan.lines.flatMap((line) => lineNotes(line, plan)),
    ...recordNotes(plan),
  ]
}

function sharedRowNotes(plan: Plan): string[] {
  const girders = new Map<string, string[]>()
  for (const g of plan.girders)
    for (const r of g.loops) girders.set(r.id, [...(girders.get(r.id) ?? []), g.id])
  return [...girders]
    .filter(([, on]) => on.length > 1)
    .map(
      ([row, on]) => `Loop row ${row} stands on girders ${on.join(', ')}: findings on it name only the row.`,
    )
}

function girderNotes(girder: Girder): string[] {
  const [a, b] = [girder.start, girder.end]
  const length = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2])
  return girder.loops.flatMap((row) => {
    const last = row.first + row.spacing * (row.count - 1)
    return row.first < -1e-3 || last > length + 1e-3
      ? [`Loop row ${row.id} of girder ${girder.id} reaches past the girder's ends.`]
      : []
  })
}

function lineNotes(line: Line, plan: Plan): string[] {
  const notes: string[] = []
  if (!plan.workers.some((w) => w.line === line.id)) notes.push(`No worker uses line ${line.id}.`)
  const { low, high } = line.serviceTemperature
  if (line.installTemperature < low || line.installTemperature > high) {
    notes.push(`The install temperature of line ${line.id} lies outside its service temperatures.`)
  }
  const half = (plan.girders.find((g) => g.id === line.girder)?.section.topWidth ?? 0) / 2
  for (const s of line.stanchions) {
    if (Math.abs(s.offset) > half)
      notes.push(`Stanchion ${s.id} stands beside the top of girder ${line.girder}.`)
  }
  return notes
}

/** Records outlive what they are about, so a reference to a line that is gone is no fault. */
function recordNotes(plan: Plan): string[] {
  return (plan.records ?? []).flatMap((r) =>
    'line' in r && !plan.lines.some((l) => l.id === r.line)
      ? [`Record ${r.id} is about line ${r.line}, which the plan no longer has.`]
      : [],
  )
}
