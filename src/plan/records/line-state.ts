/** Where a line stands by its records: inspected or not, in use or not, next look due. */
import type {
  AsBuiltRecord,
  DailyRecord,
  InspectionRecord,
  Plan,
  PlanRecord,
  RescuePlanRecord,
} from '../types'
import { recordsOf, rescuePlanOf } from './log'
import { dayAfter, momentOf } from './moment'

export type Service = 'not-inspected' | 'in-service' | 'out-of-service' | 'retired'

export interface LineState {
  line: string
  service: Service
  /** Why it is out of service or retired. */
  reason: string | null
  lastInspection: InspectionRecord | null
  lastDaily: DailyRecord | null
  asBuilt: AsBuiltRecord | null
  rescuePlan: RescuePlanRecord | null
  /** ISO 8601; null where the line is not in use, so that nothing is due. */
  nextDailyDue: string | null
  overdue: boolean
}

/** The state of a line at the moment `now` (ISO 8601), which the caller gives: nothing here looks at a clock. */
export function lineState(plan: Plan, line: string, now: string): LineState {
  const records = recordsOf(plan, line)
  const { service, reason } = records.reduce(followed, { service: 'not-inspected', reason: null } as Standing)
  const nextDailyDue = service === 'in-service' ? nextDue(records) : null
  return {
    line,
    service,
    reason,
    lastInspection: last(records, 'inspection'),
    lastDaily: last(records, 'daily'),
    asBuilt: last(records, 'as-built'),
    rescuePlan: rescuePlanOf(plan, line) ?? null,
    nextDailyDue,
    overdue: nextDailyDue !== null && momentOf(now) > momentOf(nextDailyDue),
  }
}

interface Standing {
  service: Service
  reason: string | null
  /** Taken out by a failed look, which a passed inspection lifts; else only a person putting it back does. */
  byCheck?: boolean
}

/**
 * What a record makes of a line's standing. A look that fails takes the line out of service; a passed inspection brings
 * it back from that. What a person took out only a person puts back, and what is retired stays so.
 */
function followed(standing: Standing, record: PlanRecord): Standing {
  if (standing.service === 'retired') return standing
  switch (record.kind) {
    case 'retired':
    case 'out-of-service':
      return { service: record.kind, reason: record.reason }
    case 'in-service':
      return { service: 'in-service', reason: null }
    case 'inspection':
      return afterInspection(standing, record)
    case 'daily':
      if (record.passed || standing.service !== 'in-service') return standing
      return {
        service: 'out-of-service',
        reason: `the daily check of ${record.at} did not pass`,
        byCheck: true,
      }
    default:
      return standing
  }
}

function afterInspection(standing: Standing, record: InspectionRecord): Standing {
  const takenOut = standing.service === 'out-of-service' && !standing.byCheck
  if (takenOut || record.items.length === 0) return standing
  if (inspectionPassed(record)) return { service: 'in-service', reason: null }
  return { service: 'out-of-service', reason: `the inspection of ${record.at} did not pass`, byCheck: true }
}

/** Something was looked at, and nothing failed. */
function inspectionPassed(record: InspectionRecord): boolean {
  return record.items.some((i) => i.result === 'pass') && !record.items.some((i) => i.result === 'fail')
}

/** A day after the last look that passed; an inspection is a look too. */
function nextDue(records: PlanRecord[]): string | null {
  const look = records.findLast(
    (r) =>
      (r.kind === 'daily' && r.passed) ||
      (r.kind === 'inspection' && inspectionPassed(r)) ||
      r.kind === 'in-service',
  )
  return look ? dayAfter(look.at) : null
}

function last<K extends PlanRecord['kind']>(
  records: PlanRecord[],
  kind: K,
): Extract<PlanRecord, { kind: K }> | null {
  return (records.findLast((r) => r.kind === kind) as Extract<PlanRecord, { kind: K }> | undefined) ?? null
}
