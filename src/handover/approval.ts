/** Whether a plan's approval is for exactly this state of it. Only a person approves; the papers repeat what is recorded. */
import type { ApprovalRecord, Plan } from '../plan/types'

export type ApprovalState =
  | { kind: 'none' }
  | { kind: 'stale'; record: ApprovalRecord }
  | { kind: 'current'; record: ApprovalRecord }

/** The latest approval for this hash; an approval for another state is stale, however new it is. */
export function approvalState(plan: Plan, hash: string): ApprovalState {
  const approvals = (plan.records ?? []).filter((r): r is ApprovalRecord => r.kind === 'approval')
  const current = approvals.filter((r) => r.planHash === hash).at(-1)
  if (current) return { kind: 'current', record: current }
  const last = approvals.at(-1)
  return last ? { kind: 'stale', record: last } : { kind: 'none' }
}
