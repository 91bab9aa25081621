/** What comes nearest of a placed model: in plan, where no area is shared, and in any direction. */
import type { Vec2, Vec3 } from '../../plan/types'
import { counterClockwise } from '../polygon'
import type { Room } from '../room/types'
import { lidAt } from '../room/underside'
import type { Box, TriangleIndex } from './bvh'
import { facetsOf } from './facet'
import { footingOf } from './footing'
import { type Near, nearestToFacet, stretchBound } from './nearest'
import { type Placement, toPlan } from './placed-room'
import type { Measured } from './target'

const outline = ({ min, max }: Box): Vec2[] => [
  [min.x, min.y],
  [max.x, min.y],
  [max.x, max.y],
  [min.x, max.y],
]

/** The nearest triangle in plan, of a room that is already in the model's coordinates. */
export function nearestInPlan(own: Room, index: TriangleIndex, placement: Placement): Measured['beside'] {
  const footing = footingOf(own)
  let limit = Number.POSITIVE_INFINITY
  let best: { at: Vec3; station: number } | null = null
  index.search(
    (box) => footing.distanceTo(outline(box), Number.POSITIVE_INFINITY)?.distance ?? Number.POSITIVE_INFINITY,
    () => limit,
    (corners) => {
      const near = footing.distanceTo(counterClockwise(corners.map((p) => [p[0], p[1]])), limit)
      if (!near) return
      limit = near.distance
      best = { at: [near.at[0], near.at[1], Math.max(...corners.map((p) => p[2]))], station: near.station }
    },
  )
  const found = best as { at: Vec3; station: number } | null
  return (
    found && { distance: limit * placement.scale, at: toPlan(placement, found.at), station: found.station }
  )
}

/** The place of a model that a room, in its coordinates, comes nearest to in any direction; of what lies above the girder's top nothing counts. */
export function nearestToModel(
  own: Room,
  index: TriangleIndex,
  placement: Placement,
  than: Near | null = null,
): Near | null {
  const { stretches, boxOf, mostIn } = footingOf(own)
  const least = than && { ...than, distance: than.distance / placement.scale }
  let best = least
  const boundOf = (box: Box): number => {
    if (isOverLid(own, box)) return Number.POSITIVE_INFINITY
    const bounds = boxOf(outline(box))
    const toward = best?.toward ?? null
    const apart = toward ? leastInBox(toward, box) : 0
    let least = Number.POSITIVE_INFINITY
    for (const s of stretches) {
      const bound = stretchBound(s, own.side, bounds, box.max.z)
      if (bound < least) least = Math.min(least, toward ? Math.max(bound, apart - mostIn(toward, s)) : bound)
    }
    return least
  }
  index.search(
    boundOf,
    () => best?.distance ?? Number.POSITIVE_INFINITY,
    (corners) => {
      if (corners.every((p) => p[2] >= lidAt(own, p[0], p[1]))) return
      for (const facet of facetsOf(corners)) best = nearestToFacet(own, facet, best) ?? best
    },
  )
  const found = best as Near | null
  if (found === least) return than
  return found && { ...found, distance: found.distance * placement.scale, at: toPlan(placement, found.at) }
}

/** The least of n.Q over a box. */
const leastInBox = (n: Vec3, { min, max }: Box): number =>
  n[0] * (n[0] > 0 ? min.x : max.x) + n[1] * (n[1] > 0 ? min.y : max.y) + n[2] * (n[2] > 0 ? min.z : max.z)

/** Whether all that is in a box lies above the plane of the line's girder. */
export const isOverLid = (room: Room, { min, max }: Box): boolean =>
  min.z >=
  room.lid.z0 +
    Math.max(room.lid.gx * min.x, room.lid.gx * max.x) +
    Math.max(room.lid.gy * min.y, room.lid.gy * max.y)
