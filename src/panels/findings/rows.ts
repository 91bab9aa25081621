/** What the row of a finding shows beside it: where it is, and whether it is chosen, under the pointer or noted. */
import type { Plan } from '../../plan/types'
import { isFinding } from '../../state/derived'
import { refOfId, sameRef } from '../../state/refs'
import { useApp } from '../../state/store'
import type { Finding } from '../../study/results'
import { refName } from '../words/status'
import type { RowProps } from './FindingRow'

/** A function that gives the row of any finding of the plan as it stands. */
export function useRows(): (finding: Finding) => RowProps {
  const plan = useApp((s) => s.plan)
  const units = useApp((s) => s.units)
  const hover = useApp((s) => s.hover)
  const chosen = useApp((s) => s.finding)
  const notes = (plan.records ?? []).filter((r) => r.kind === 'finding-note')
  return (finding) => ({
    finding,
    units,
    where: placeWords(plan, finding),
    chosen: isFinding(finding, chosen),
    hovered: hover !== null && sameRef(hover, refOfId(plan, finding.subject)),
    noted: notes.some((note) => isFinding(finding, note)),
  })
}

function placeWords(plan: Plan, finding: Finding): string {
  const ref = refOfId(plan, finding.subject)
  const name = ref ? refName(plan, ref) : finding.subject
  const line =
    finding.line && finding.line !== finding.subject
      ? plan.lines.find((l) => l.id === finding.line)
      : undefined
  return line ? `${name}, ${line.name || line.id}` : name
}
