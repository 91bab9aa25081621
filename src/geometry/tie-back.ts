import type { Girder, LoopRef, Stanchion, TieBack } from '../plan/types'
import { findLoop, type Loop } from './loops'
import { degrees } from './vec'

/** One strap leg from a stanchion's head down to a loop (mechanics section 6); the girder's slope is neglected. */
export interface Leg {
  which: 'strap' | 'tensioner'
  ref: LoopRef
  /** Null where the loop does not exist. */
  loop: Loop | null
  /** Horizontal distances along and across the girder, and the drop, m; all positive. */
  along: number
  across: number
  drop: number
  length: number
  /** From the vertical, degrees. */
  angle: number
  /** The foot is on the far side from the line. */
  farSide: boolean
}

/** `away` is -1 where the line runs towards greater stations (first stanchion), +1 where it ends (last stanchion). */
function leg(
  girder: Girder,
  stanchion: Stanchion,
  height: number,
  away: 1 | -1,
  which: Leg['which'],
  ref: LoopRef,
): Leg {
  const loop = findLoop(girder, ref)
  const signed = loop ? (loop.station - stanchion.station) * away : 0
  const along = Math.abs(signed)
  const across = loop ? Math.abs(loop.row.offset - stanchion.offset) : 0
  const length = Math.hypot(along, across, height)
  return {
    which,
    ref,
    loop,
    along,
    across,
    drop: height,
    length,
    angle: degrees(Math.acos(height / length)),
    farSide: loop !== null && signed > 0,
  }
}

/** Both legs of a tie-back. */
export function tieBackLegs(
  girder: Girder,
  stanchion: Stanchion,
  height: number,
  away: 1 | -1,
  tieBack: TieBack,
): [Leg, Leg] {
  return [
    leg(girder, stanchion, height, away, 'strap', tieBack.strapLoop),
    leg(girder, stanchion, height, away, 'tensioner', tieBack.tensionerLoop),
  ]
}
