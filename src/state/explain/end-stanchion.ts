/** An end stanchion taken apart: what pulls its head, and what shaft, legs and loops get of it (mechanics section 6). */
import { findPart } from '../../plan/find'
import type { Plan } from '../../plan/types'
import type { Finding, Results, StanchionResult } from '../../study/results'
import type { Explanation, ExplanationRow } from './types'

const n = (label: string, value: number | null): ExplanationRow => ({ label, value, unit: 'N' })

export function explainEnd(plan: Plan, results: Results, finding: Finding): Explanation | null {
  const tieBack = plan.lines.flatMap((l) => l.tieBacks).find((t) => t.id === finding.subject)
  const id = tieBack?.stanchion ?? finding.subject
  const found = results.lines.flatMap((l) => l.stanchions).find((s) => s.id === id)
  if (!found) return null
  const against = { label: 'found', value: finding.value, unit: finding.unit, total: true }
  return {
    title: 'Where the pull goes',
    formula: 'leg = T (k / K) / (a / l)',
    rows: [...headRows(found), ...legRows(found), ...(finding.value === null ? [] : [against])],
    method: `${id} in the energy fall that pulls it hardest; each part is judged by its own worst fall of either method.`,
    parts: strengths(plan, id, tieBack?.part),
  }
}

const headRows = (s: StanchionResult): ExplanationRow[] => [
  n('head pull along the line', s.head.along),
  n('head pull across', s.head.across),
  n('head pull down', s.head.down),
  n('shaft, along the line', s.shaftForce),
  n('axial in the stanchion', s.axial),
  { label: 'moment at the base', value: s.baseMoment, unit: 'N m' },
]

function legRows(s: StanchionResult): ExplanationRow[] {
  if (s.legForces.length === 0) return []
  const names = ['strap leg', 'tensioner leg']
  const legs = s.legForces.map((force, i) => n(names[i % 2] ?? `leg ${i + 1}`, force))
  return [...legs, { label: 'steeper leg from the vertical', value: s.tieBackAngle, unit: 'deg' }]
}

function strengths(plan: Plan, stanchionId: string, tieBackPart: string | undefined): Explanation[] {
  const stanchion = plan.lines.flatMap((l) => l.stanchions).find((s) => s.id === stanchionId)
  const post = stanchion && findPart(plan, stanchion.part, 'stanchion')
  const strap = tieBackPart ? findPart(plan, tieBackPart, 'tie-back') : undefined
  const rows = [
    ...(post ? [n('head capacity', post.headCapacity), n('axial capacity', post.axialCapacity)] : []),
    ...(strap ? [n('breaking strength of the tie-back', strap.breakingStrength)] : []),
    { label: 'strength over demand wanted', value: plan.basis.safetyFactor, unit: 'ratio' },
  ]
  return [{ title: 'What it can carry', rows }]
}
