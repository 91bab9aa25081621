/**
 * What was measured between a room and an obstacle is kept with the room as long as neither changes: after one stanchion
 * moves only its line is measured again, after one obstacle moves only that obstacle.
 */
import type { Room } from '../room/types'
import type { Near } from './nearest'
import type { Measured, Target } from './target'

interface Kept {
  key: string
  measured?: Measured
  nearest?: Near | null
}

const keptOf = new WeakMap<Room, Map<string, Kept>>()

function kept(room: Room, target: Target): Kept {
  const all = keptOf.get(room) ?? new Map<string, Kept>()
  keptOf.set(room, all)
  const before = all.get(target.id)
  const entry = before?.key === target.key ? before : { key: target.key }
  all.set(target.id, entry)
  return entry
}

/** What the room says of a target; null where it cannot be measured. */
export function measuredGap(room: Room, target: Target): Measured | null {
  if (!target.measure) return null
  const entry = kept(room, target)
  entry.measured ??= target.measure(room)
  return entry.measured
}

/** The place of a target that the room comes nearest to; null where there is none. */
export function nearestGap(room: Room, target: Target): Near | null {
  if (!target.nearest) return null
  const entry = kept(room, target)
  if (entry.nearest === undefined) {
    const point = measuredGap(room, target)?.point
    entry.nearest = target.nearest(room, point ? { ...point, distance: Math.max(0, point.gap) } : null)
  }
  return entry.nearest
}
