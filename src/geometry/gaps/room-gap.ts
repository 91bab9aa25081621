/** Least vertical distance, and least distance in plan, between a room and facets or a level surface. */
import type { Vec2, Vec3 } from '../../plan/types'
import type { Room, Slice } from '../room/types'
import { allSlices } from '../room/underside'
import { footingOf, type PlanDistance } from './footing'
import { centreAt } from './solid'
import { boxesApart } from './stretch'
import { swingGap } from './swing-gap'
import type { Facet, GapPoint } from './types'

/** Bounds that touch a body's rim may be apart by this in figures, m. */
const ROUNDING = 1e-9

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
  const { stretches, boxOf } = footingOf(room)
  const bounds = boxOf(facet.points)
  for (const { low, box, along } of stretches) {
    if (low - facet.top < limit && boxesApart(box, bounds) <= room.side + ROUNDING) along.forEach(look)
  }
  return best
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
