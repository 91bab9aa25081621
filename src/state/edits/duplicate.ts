/** Copies beside the original: new ids, free names, a step aside where things have a place of their own. */
import { usedIds } from '../../plan/ids'
import type { Plan } from '../../plan/types'
import { type Ref, resolveRef } from '../refs'
import { copied } from './copied'
import { duplicateGirder } from './girder-edits'
import { freeName, newId } from './ids'
import { addStanchion } from './stanchion-edits'
import { moveRefs } from './transform'

/** Duplicates what can be duplicated and says what came of it, in order. */
export function duplicateRefs(plan: Plan, refs: readonly Ref[]): Ref[] {
  return refs.flatMap((ref) => {
    const made = duplicateRef(plan, ref)
    return made ? [made] : []
  })
}

function duplicateRef(plan: Plan, ref: Ref): Ref | null {
  const found = resolveRef(plan, ref)
  if (!found) return null
  if (found.kind === 'girder') {
    const gap = found.girder.section.topWidth * 2.5
    const copy = duplicateGirder(plan, found.girder, sideways(found.girder.start, found.girder.end, gap))
    plan.girders.push(copy)
    return { kind: 'girder', id: copy.id }
  }
  if (found.kind === 'worker') {
    const id = newId(plan, 'W')
    plan.workers.push({ ...found.worker, id, name: freeName(found.worker.name, plan.workers) })
    return { kind: 'worker', id }
  }
  if (found.kind === 'obstacle') return copyIn(plan, 'obstacle', 'O', plan.obstacles, found.obstacle)
  if (found.kind === 'deck') return copyIn(plan, 'deck', 'D', plan.decks ?? [], found.deck)
  if (found.kind === 'stanchion') {
    const next = found.line.stanchions[found.index + 1] ?? found.line.stanchions[found.index - 1]
    const id = next && addStanchion(plan, found.line.id, (found.stanchion.station + next.station) / 2)
    return id ? { kind: 'stanchion', id } : null
  }
  return null
}

function copyIn<T extends { id: string; name: string }>(
  plan: Plan,
  kind: Ref['kind'],
  prefix: string,
  list: T[],
  item: T,
): Ref {
  const id = newId(plan, prefix, usedIds(plan))
  list.push({ ...copied(item), id, name: freeName(item.name, list) })
  const ref: Ref = { kind, id }
  moveRefs(plan, [ref], [1, 1, 0])
  return ref
}

function sideways(start: readonly number[], end: readonly number[], by: number): [number, number, number] {
  const [dx, dy] = [(end[0] ?? 0) - (start[0] ?? 0), (end[1] ?? 0) - (start[1] ?? 0)]
  const level = Math.hypot(dx, dy) || 1
  return [(-dy / level) * by, (dx / level) * by, 0]
}
