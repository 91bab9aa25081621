/** Finds lines and their parts in a plan or a draft of one. */
import type { Girder, Line, Plan, Stanchion, TieBack } from '../../plan/types'

export const girderOf = (plan: Plan, line: Line): Girder | undefined =>
  plan.girders.find((g) => g.id === line.girder)

export function stanchionIn(
  plan: Plan,
  id: string,
): { line: Line; index: number; stanchion: Stanchion; girder: Girder } | null {
  for (const line of plan.lines) {
    const index = line.stanchions.findIndex((s) => s.id === id)
    const stanchion = line.stanchions[index]
    const girder = girderOf(plan, line)
    if (stanchion && girder) return { line, index, stanchion, girder }
  }
  return null
}

export function tieBackIn(plan: Plan, id: string): { line: Line; tieBack: TieBack; girder: Girder } | null {
  for (const line of plan.lines) {
    const tieBack = line.tieBacks.find((t) => t.id === id)
    const girder = girderOf(plan, line)
    if (tieBack && girder) return { line, tieBack, girder }
  }
  return null
}
