/** Whether a qualified person has approved exactly this plan; only they can, and any change makes it stale. */
import type { JSX } from 'react'
import { planHash } from '../../plan/hash'
import type { Plan } from '../../plan/types'
import { once } from '../../state/derived'
import { useApp } from '../../state/store'
import css from './header.module.css'

const approvalWords = once((plan: Plan): string => {
  const last = (plan.records ?? []).filter((r) => r.kind === 'approval').at(-1)
  if (!last) return 'not approved'
  return last.planHash === planHash(plan)
    ? `approved by ${last.by}, ${last.at.slice(0, 10)}`
    : 'changed since it was approved'
})

/**
 * While a hand holds something it steps aside: with it and all four counts the head of a narrow window would take two lines,
 * and the picture would move under the hand.
 */
export function ApprovalState(): JSX.Element | null {
  const words = useApp((s) => (s.gesture || s.plan.lines.length === 0 ? null : approvalWords(s.plan)))
  return words ? <span className={css.state}>{words}</span> : null
}
