/** Points that a hand can snap to on a girder. */
import { girderFrame } from '../../geometry/girder'
import { loopPoint, loopsOf } from '../../geometry/loops'
import type { Girder, Vec3 } from '../../plan/types'

export interface LoopPoints {
  points: Vec3[]
  at: { station: number; offset: number }[]
}

const known = new WeakMap<Girder, LoopPoints>()

/** Every loop of a girder in space, with its station and offset; remembered, for it is asked in every step of a drag. */
export function loopPointsOf(girder: Girder): LoopPoints {
  const before = known.get(girder)
  if (before) return before
  const frame = girderFrame(girder)
  const loops = girder.loops.flatMap(loopsOf)
  const found = {
    points: loops.map((loop) => loopPoint(frame, loop)),
    at: loops.map((loop) => ({ station: loop.station, offset: loop.row.offset })),
  }
  known.set(girder, found)
  return found
}
