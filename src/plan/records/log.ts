/**
 * The log of a plan: records are only ever added, never changed and never taken out. The order in which they stand is
 * the order in which they count.
 */
import { canonical } from '../canonical'
import { freshId } from '../ids'
import type { ApprovalRecord, Plan, PlanRecord, RescuePlanRecord } from '../types'

/** The records of one line, oldest first. */
export function recordsOf(plan: Plan, line: string): PlanRecord[] {
  return (plan.records ?? []).filter((r) => 'line' in r && r.line === line)
}

/** The plan with one more record at the end of its log. */
export function withRecord(plan: Plan, record: PlanRecord): Plan {
  return { ...plan, records: [...(plan.records ?? []), record] }
}

/** An id for the next record. */
export function recordId(plan: Plan): string {
  return freshId(plan, 'R')
}

/** Whether the later plan still has every record of the earlier one, unchanged and in order. */
export function keepsRecords(before: Plan, after: Plan): boolean {
  const later = after.records ?? []
  return (before.records ?? []).every(
    (r, i) => later[i] !== undefined && canonical(r) === canonical(later[i]),
  )
}

/** A line's rescue plan as last recorded. */
export function rescuePlanOf(plan: Plan, line: string): RescuePlanRecord | undefined {
  return recordsOf(plan, line).findLast((r): r is RescuePlanRecord => r.kind === 'rescue-plan')
}

/** What a rescue plan still lacks, in words; empty: it is filled in. */
export function rescuePlanGaps(record: RescuePlanRecord | undefined): string[] {
  if (!record) return ['no rescue plan is recorded']
  const gaps: string[] = []
  if (record.method.trim() === '') gaps.push('how a hanging worker is reached')
  if (record.gear.trim() === '') gaps.push('the gear')
  if (record.people < 1) gaps.push('who does it')
  if (record.minutes <= 0) gaps.push('in what time')
  return gaps
}

export interface ApprovalState {
  /** current: an approval was given for exactly what the plan says now. */
  status: 'none' | 'current' | 'stale'
  record: ApprovalRecord | null
}

/** Whether a person's approval still stands, given the hash of the plan as it is (`planHash`). */
export function approvalState(plan: Plan, hash: string): ApprovalState {
  const approvals = (plan.records ?? []).filter((r): r is ApprovalRecord => r.kind === 'approval')
  const matching = approvals.findLast((r) => r.planHash === hash)
  if (matching) return { status: 'current', record: matching }
  const last = approvals.at(-1)
  return last ? { status: 'stale', record: last } : { status: 'none', record: null }
}
