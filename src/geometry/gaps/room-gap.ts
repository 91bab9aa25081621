/** Least vertical distance, and least distance in plan, between a room and facets or a level surface. */
import type { Vec2, Vec3 } from '../../plan/types'
import { nearestInPolygon } from '../polygon'
import type { Room, Slice } from '../room/types'
import { allSlices, firstAtLeast } from '../room/underside'
import { footingOf, type PlanDistance } from './footing'
import { centreAt } from './solid'
import { swingGap } from './swing-gap'
import type { Facet, GapPoint } from './types'

/** Gap to a level surface without end, such as ground; null for an empty room. */
export function gapToLevel(room: Room, elevation: number): GapPoint | null {
  let best: GapPoint | null = null
  for (const s of allSlices(room)) {
    const gap = s.z - s.radius - elevation
    if (!best || gap < best.gap) {
      best = { gap, at: [s.x, s.y, elevation], station: s.station, corner: s.corner }
    }
  }
  return best
}

/** Gap to the nearest of some facets, m; null where the room shares no plan area with any. */
export function gapToFacets(room: Room, facets: Facet[]): GapPoint | null {
  let best: GapPoint | null = null
  for (const facet of facets) best = gapToFacet(room, facet, best) ?? best
  return best
}

/** Gap to one facet where it is less than that of `than`; else null. */
export function gapToFacet(room: Room, facet: Facet, than: GapPoint | null): GapPoint | null {
  let limit = than?.gap ?? Number.POSITIVE_INFINITY
  let best: GapPoint | null = null
  const look = (s: Slice): void => {
    const found = swingGap(s, room.side, facet, limit)
    if (!found) return
    limit = found.gap
    const centre = centreAt(facet, found.at[0], found.at[1])
    best = { ...found, station: s.station, corner: s.corner, ...(centre ? { centre } : {}) }
  }
  const [from, to] = stationRange(room, facet.points)
  for (let i = from; i < to; i++) look(room.slices[i]!)
  for (const fan of room.ends) {
    const [x, y] = nearestInPolygon(facet.points, [fan.x, fan.y])
    if (Math.hypot(x - fan.x, y - fan.y) <= fan.reach + room.side) fan.slices.forEach(look)
  }
  return best
}

/** Range of slices that a polygon can meet, by station. */
function stationRange(room: Room, points: Vec2[]): [number, number] {
  const { frame, side } = room
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const [x, y] of points) {
    const flat = (x - frame.origin[0]) * frame.along[0] + (y - frame.origin[1]) * frame.along[1]
    low = Math.min(low, flat)
    high = Math.max(high, flat)
  }
  const rate = frame.planRate
  return [
    firstAtLeast(room.slices, (low / rate - side) / rate),
    firstAtLeast(room.slices, (high / rate + side) / rate + 1e-9),
  ]
}

/** The nearest of some facets in plan. */
export function planDistance(room: Room, facets: Facet[]): (PlanDistance & { z: number }) | null {
  const footing = footingOf(room)
  let best: (PlanDistance & { z: number }) | null = null
  for (const facet of facets) {
    const found = footing.distanceTo(facet.points, best?.distance ?? Number.POSITIVE_INFINITY)
    if (found) best = { ...found, z: facet.top }
  }
  return best
}

/** A point in space from plan and elevation. */
export const spot = (at: Vec2, z: number): Vec3 => [at[0], at[1], z]
