/** Which lines two plans draw differently. */
import type { Plan } from '../../plan/types'
import type { Comparison } from './index'

/** Ids of the lines that a change or another governing number touches, also of those that only one plan has. */
export function changedLines(before: Plan, after: Plan, c: Comparison): string[] {
  const lines = [...after.lines, ...before.lines]
  const touched = new Set([
    ...c.changes.flatMap((x) => (x.what === 'line' || x.what === 'girder' ? [x.id] : x.of ? [x.of] : [])),
    ...c.governing.map((x) => x.line),
  ])
  const found = lines.filter((l) => touched.has(l.id) || touched.has(l.girder))
  return [...new Set(found.map((l) => l.id))]
}
