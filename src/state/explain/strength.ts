/** Strength over demand for rope and hardware: which fall governs, and the other method beside it. */
import { findPart } from '../../plan/find'
import type { Line, Plan } from '../../plan/types'
import type { Fall, Finding, Results } from '../../study/results'
import { greatest, methodWords } from './fall'
import type { Explanation, ExplanationRow } from './types'

const n = (label: string, value: number | null, total = false): ExplanationRow => ({
  label,
  value,
  unit: 'N',
  total,
})

export function explainStrength(plan: Plan, results: Results, finding: Finding): Explanation | null {
  const line = plan.lines.find((l) => l.id === finding.subject)
  const falls = results.lines.find((l) => l.id === finding.subject)?.falls
  if (!line || !falls) return null
  const grip = finding.rule === 'rope-held' ? 'held' : (line.grip ?? 'sliding')
  const own = falls.filter((f) => f.grip === grip)
  const worst = greatest(own, (f) => f.tension)
  if (!worst) return null
  const { rows, formula } = strengthRows(plan, line, finding)
  return {
    title: 'Strength over demand',
    formula,
    rows: [
      ...rows,
      n('greatest tension', worst.tension),
      { label: 'found', value: finding.value, unit: finding.unit, total: true },
    ],
    method: `${methodWords(worst)}.`,
    parts: [bothMethods(own)],
  }
}

function strengthRows(plan: Plan, line: Line, finding: Finding): { rows: ExplanationRow[]; formula: string } {
  const rope = findPart(plan, line.wireRope, 'wire-rope')
  if (finding.rule === 'hardware-strength') {
    const hardware = line.hardware.flatMap((id) => findPart(plan, id, 'hardware') ?? [])
    const absorber = line.absorber ? findPart(plan, line.absorber, 'line-absorber') : undefined
    const all = [...hardware, ...(absorber ? [absorber] : [])]
    const weakest = all.reduce<(typeof all)[number] | null>(
      (a, b) => (a && a.breakingStrength <= b.breakingStrength ? a : b),
      null,
    )
    const rows = weakest
      ? [n(`breaking strength of the weakest, ${weakest.name}`, weakest.breakingStrength)]
      : []
    return { rows, formula: 'breaking strength / greatest tension' }
  }
  if (!rope || finding.rule === 'time-method')
    return { rows: [], formula: 'tension in time / tension by energy' }
  const rows = [
    n('breaking strength of the wire rope', rope.breakingStrength),
    { label: 'efficiency of its end', value: rope.termination, unit: 'fraction' },
  ]
  return { rows, formula: 'breaking strength x end efficiency / greatest tension' }
}

function bothMethods(falls: readonly Fall[]): Explanation {
  const by = (method: Fall['method']): Fall | null =>
    greatest(
      falls.filter((f) => f.method === method),
      (f) => f.tension,
    )
  const rows = [n('by energy', by('energy')?.tension ?? null), n('in time', by('dynamic')?.tension ?? null)]
  return { title: 'Both methods', rows, method: 'The greater one governs.' }
}
