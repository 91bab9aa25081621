/** A line and somebody on it: what a person draws is never an empty line. */
import type { Plan } from '../../plan/types'
import { girderLength } from './gaps'
import { addWorker } from './line-edits'
import { addProposedLine } from './propose-line'

/** A proposed line with a worker on it; infinite ends mean the girder's. */
export function addLineWithCrew(plan: Plan, girderId: string, from: number, to: number): string | null {
  const girder = plan.girders.find((g) => g.id === girderId)
  if (!girder) return null
  const length = girderLength(girder)
  const clamp = (s: number): number => Math.min(length, Math.max(0, s))
  const id = addProposedLine(plan, girderId, clamp(from), clamp(to))
  if (id) addWorker(plan, id)
  return id
}
