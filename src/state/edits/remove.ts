/** Takes things out of a plan with everything that can't be without them. */
import type { Plan } from '../../plan/types'
import { partIdsOf } from '../../plan/uses'
import type { Ref } from '../refs'
import { removeStanchion } from './stanchion-edits'
import { removeTieBack } from './tie-back-edits'

/** What goes along when a thing goes, in words for the question beforehand; empty where nothing does. */
export function dependentsOf(plan: Plan, ref: Ref): string[] {
  if (ref.kind === 'girder') {
    const lines = plan.lines.filter((l) => l.girder === ref.id)
    const frames = plan.obstacles.filter((o) => o.kind === 'cross-frame' && o.between.includes(ref.id))
    return [
      ...lines.flatMap((l) => [l.name || l.id, ...crewOf(plan, l.id)]),
      ...frames.map((f) => f.name || f.id),
    ]
  }
  if (ref.kind === 'line') return crewOf(plan, ref.id)
  if (ref.kind === 'stanchion') {
    return plan.lines.flatMap((l) => l.tieBacks.filter((t) => t.stanchion === ref.id).map((t) => t.id))
  }
  if (ref.kind === 'loop-row') {
    const girder = plan.girders.find((g) => g.loops.some((r) => r.id === ref.id))
    const lines = plan.lines.filter((l) => l.girder === girder?.id)
    return lines.flatMap((l) => l.tieBacks.filter((t) => usesRow(t, ref.id)).map((t) => t.id))
  }
  return []
}

const crewOf = (plan: Plan, line: string): string[] =>
  plan.workers.filter((w) => w.line === line).map((w) => w.name || w.id)

const usesRow = (t: { strapLoop: { row: string }; tensionerLoop: { row: string } }, row: string): boolean =>
  t.strapLoop.row === row || t.tensionerLoop.row === row

/** Removes one thing; false, with the plan as it was, where it can't go (a line keeps two stanchions). */
export function removeRef(plan: Plan, ref: Ref): boolean {
  switch (ref.kind) {
    case 'girder':
      return removeGirder(plan, ref.id)
    case 'loop-row':
      return removeLoopRow(plan, ref.id)
    case 'line':
      return removeLine(plan, ref.id)
    case 'stanchion':
      return removeStanchion(plan, ref.id)
    case 'tie-back':
      return removeTieBack(plan, ref.id)
    case 'worker':
      return drop(plan.workers, ref.id)
    case 'obstacle':
      return drop(plan.obstacles, ref.id)
    case 'deck':
      return drop(plan.decks ?? [], ref.id)
    case 'part':
      return partInUse(plan, ref.id) ? false : drop(plan.parts, ref.id)
  }
}

function drop<T extends { id: string }>(list: T[], id: string): boolean {
  const index = list.findIndex((item) => item.id === id)
  if (index >= 0) list.splice(index, 1)
  return index >= 0
}

function removeGirder(plan: Plan, id: string): boolean {
  for (const line of plan.lines.filter((l) => l.girder === id)) removeLine(plan, line.id)
  plan.obstacles = plan.obstacles.filter((o) => !(o.kind === 'cross-frame' && o.between.includes(id)))
  return drop(plan.girders, id)
}

function removeLine(plan: Plan, id: string): boolean {
  plan.workers = plan.workers.filter((w) => w.line !== id)
  return drop(plan.lines, id)
}

function removeLoopRow(plan: Plan, id: string): boolean {
  const girder = plan.girders.find((g) => g.loops.some((r) => r.id === id))
  if (!girder) return false
  for (const line of plan.lines.filter((l) => l.girder === girder.id)) {
    line.tieBacks = line.tieBacks.filter((t) => !usesRow(t, id))
  }
  return drop(girder.loops, id)
}

/** Whether a line or a worker uses the part with an id. */
export const partInUse = (plan: Plan, id: string): boolean => partIdsOf(plan).has(id)
