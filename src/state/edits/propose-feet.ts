/**
 * Where a stanchion's tie-back goes: two neighbouring loops on the far side from the line, the nearest ones whose legs
 * stand at least the least angle from the vertical and at least the stanchion's height away along the girder.
 */
import { loopStation } from '../../geometry/loops'
import type { Girder, LoopRef, LoopRow, Plan, Stanchion } from '../../plan/types'
import { girderLength } from './gaps'

export interface Feet {
  strapLoop: LoopRef
  tensionerLoop: LoopRef
}

/** `side` -1: towards the girder's start. Null where the girder has no two such loops. */
export function proposeFeet(plan: Plan, girder: Girder, stanchion: Stanchion, side: 1 | -1): Feet | null {
  const part = plan.parts.find((p) => p.id === stanchion.part)
  const height = part?.kind === 'stanchion' ? part.height : 1
  const rows = [...girder.loops].sort((a, b) => nearness(a, stanchion) - nearness(b, stanchion))
  for (const row of rows) {
    const feet = feetInRow(row, girderLength(girder), stanchion, reach(plan, row, stanchion, height), side)
    if (feet) return feet
  }
  return null
}

const nearness = (row: LoopRow, stanchion: Stanchion): number => Math.abs(row.offset - stanchion.offset)

/** Least distance along the girder, m: the height, or more where the angle asks for it. */
function reach(plan: Plan, row: LoopRow, stanchion: Stanchion, height: number): number {
  const level = height * Math.tan((plan.basis.minTieBackAngle * Math.PI) / 180)
  const across = nearness(row, stanchion)
  return Math.max(height, Math.sqrt(Math.max(0, level ** 2 - across ** 2)))
}

function feetInRow(
  row: LoopRow,
  length: number,
  stanchion: Stanchion,
  least: number,
  side: 1 | -1,
): Feet | null {
  const place = (stanchion.station + side * least - row.first) / row.spacing
  const near = side < 0 ? Math.floor(place + 1e-6) : Math.ceil(place - 1e-6)
  const far = near + side
  const onGirder = (i: number): boolean =>
    i >= 0 && i < row.count && loopStation(row, i) >= 0 && loopStation(row, i) <= length
  if (!onGirder(near) || !onGirder(far)) return null
  return { strapLoop: { row: row.id, index: near }, tensionerLoop: { row: row.id, index: far } }
}
