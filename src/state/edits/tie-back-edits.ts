/** Tie-backs: move a foot from loop to loop, add, remove. */
import { loopStation } from '../../geometry/loops'
import type { LoopRef, Plan, TieBack } from '../../plan/types'
import { newId } from './ids'
import { stanchionIn, tieBackIn } from './lookup'
import { proposeFeet } from './propose-feet'

export type Foot = 'strap' | 'tensioner'

export const footLoop = (tieBack: TieBack, foot: Foot): LoopRef =>
  foot === 'strap' ? tieBack.strapLoop : tieBack.tensionerLoop

/** Puts a foot on the loop nearest to a station, in the row it is on or in the nearest row where an offset is given. */
export function moveFoot(
  plan: Plan,
  id: string,
  foot: Foot,
  station: number,
  offset?: number,
): number | null {
  const at = tieBackIn(plan, id)
  if (!at || !Number.isFinite(station)) return null
  const loop = footLoop(at.tieBack, foot)
  const byOffset = [...at.girder.loops].sort(
    (a, b) => Math.abs(a.offset - (offset ?? 0)) - Math.abs(b.offset - (offset ?? 0)),
  )
  const row = offset === undefined ? at.girder.loops.find((r) => r.id === loop.row) : byOffset[0]
  if (!row) return null
  loop.row = row.id
  loop.index = Math.min(row.count - 1, Math.max(0, Math.round((station - row.first) / row.spacing)))
  return loop.index
}

/** One loop on or back. */
export function nudgeFoot(plan: Plan, id: string, foot: Foot, direction: 1 | -1): number | null {
  const at = tieBackIn(plan, id)
  const loop = at && footLoop(at.tieBack, foot)
  const row = at?.girder.loops.find((r) => r.id === loop?.row)
  if (!at || !loop || !row) return null
  return moveFoot(plan, id, foot, loopStation(row, loop.index + direction))
}

/** Names a foot's loop by the number people count, from 1; false where the row has no such loop. */
export function setFootLoop(plan: Plan, id: string, foot: Foot, number: number): boolean {
  const at = tieBackIn(plan, id)
  const loop = at && footLoop(at.tieBack, foot)
  const row = at?.girder.loops.find((r) => r.id === loop?.row)
  if (!loop || !row || !Number.isInteger(number) || number < 1 || number > row.count) return false
  loop.index = number - 1
  return true
}

/** A tie-back for a stanchion at the loops that suit it, on the far side from the line; null where none do. */
export function addTieBack(plan: Plan, stanchionId: string): string | null {
  const at = stanchionIn(plan, stanchionId)
  const like =
    plan.lines.flatMap((l) => l.tieBacks).at(-1)?.part ?? plan.parts.find((p) => p.kind === 'tie-back')?.id
  if (!at || !like) return null
  const side = at.index === 0 ? -1 : 1
  const feet = proposeFeet(plan, at.girder, at.stanchion, side)
  if (!feet) return null
  const id = newId(plan, 'T')
  at.line.tieBacks.push({ id, stanchion: stanchionId, part: like, ...feet })
  return id
}

export function removeTieBack(plan: Plan, id: string): boolean {
  const at = tieBackIn(plan, id)
  if (!at) return false
  at.line.tieBacks = at.line.tieBacks.filter((t) => t.id !== id)
  return true
}
