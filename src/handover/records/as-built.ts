/** As-built stations and tension: against the design, and as a plan of their own that is computed again. */
import { lineState } from '../../plan/records/line-state'
import type { AsBuiltRecord, Line, Plan } from '../../plan/types'

export interface Difference {
  id: string
  designed: number
  /** null: not measured. */
  measured: number | null
  difference: number | null
}

export interface AsBuiltDifferences {
  record: AsBuiltRecord
  stanchions: Difference[]
  tension: Difference
}

const difference = (id: string, designed: number, measured: number | null): Difference => ({
  id,
  designed,
  measured,
  difference: measured === null ? null : measured - designed,
})

/** The last as-built record of a line against its design; null where there is none. */
export function asBuiltDifferences(plan: Plan, line: Line): AsBuiltDifferences | null {
  const record = lineState(plan, line.id, '').asBuilt
  if (!record) return null
  return {
    record,
    stanchions: line.stanchions.map((s) => difference(s.id, s.station, record.stations[s.id] ?? null)),
    tension: difference('tension', line.pretension, record.tension),
  }
}

/**
 * The plan with every line where it was measured: stations and tension of the last as-built records, everything else
 * as designed. Study this plan to check what stands; it has a hash of its own. The same plan where nothing is recorded.
 */
export function asBuiltPlan(plan: Plan): Plan {
  const lines = plan.lines.map((line) => {
    const record = lineState(plan, line.id, '').asBuilt
    if (!record) return line
    const stanchions = line.stanchions.map((s) => ({ ...s, station: record.stations[s.id] ?? s.station }))
    return { ...line, stanchions, pretension: record.tension }
  })
  return lines.every((l, i) => l === plan.lines[i]) ? plan : { ...plan, lines }
}
