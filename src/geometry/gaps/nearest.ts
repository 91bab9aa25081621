/** Least distance in any direction between a room and facets or a level surface. */
import type { Vec3 } from '../../plan/types'
import type { Room, Slice } from '../room/types'
import { beside, type Footing, footingOf } from './footing'
import { gapToLevel } from './room-gap'
import { boxesApart, type PlanBox, type Stretch } from './stretch'
import { apartIn, leastIn, swingDistance } from './swing-distance'
import type { Facet } from './types'

/** Where a room comes nearest to an obstacle, whatever the direction. */
export interface Near {
  /** m; 0 where they touch. */
  distance: number
  /** On the obstacle. */
  at: Vec3
  station: number
  /** Index into the room's corners. */
  corner: number
  /** Unit direction from the room to it, in the coordinates that it was looked for in, where it is known. */
  toward?: Vec3 | null
}

/** To a level surface without end: straight down. */
export function nearestToLevel(room: Room, elevation: number): Near | null {
  const found = gapToLevel(room, elevation)
  return found && { ...found, distance: Math.max(0, found.gap) }
}

/** To the nearest of some facets, or `than` where none is nearer; null for none, or for an empty room. */
export function nearestToFacets(room: Room, facets: Facet[], than: Near | null = null): Near | null {
  let best = than
  for (const facet of facets) best = nearestToFacet(room, facet, best) ?? best
  return best
}

/** To one facet where it is nearer than `than`; else null. Stretches that cannot be nearer are passed over. */
export function nearestToFacet(room: Room, facet: Facet, than: Near | null): Near | null {
  const footing = footingOf(room)
  const { side } = room
  const bounds = footing.boxOf(facet.points)
  let limit = than?.distance ?? Number.POSITIVE_INFINITY
  let best: Near | null = null
  // The direction of the nearest place so far: most of what is not nearer is seen to be so in it.
  let toward = than?.toward ?? null
  const look = (s: Slice): void => {
    if (toward && apartIn(toward, s, side, facet) >= limit) return
    if (sliceBound(s, side, facet) >= limit) return
    const found = swingDistance(s, side, facet, limit)
    if (!found) return
    limit = found.distance
    toward = found.toward
    best = { ...found, station: s.station, corner: s.corner }
  }
  const mayBeNearer = (stretch: Stretch): boolean =>
    stretchBound(stretch, side, bounds, facet.top) < limit &&
    !(toward && leastIn(toward, facet) - footing.mostIn(toward, stretch) >= limit)
  const first = nearestStretch(footing, side, bounds, facet.top)
  if (!first || stretchBound(first, side, bounds, facet.top) >= limit) return null
  if (mayBeNearer(first)) inOrder(first.slices, side, facet).forEach(look)
  for (const stretch of footing.stretches) {
    if (stretch !== first && mayBeNearer(stretch)) stretch.slices.forEach(look)
  }
  return best
}

/** No swing of a stretch is nearer than this to anything within the bounds and no higher than `top`, m. */
export function stretchBound({ box, low }: Stretch, side: number, bounds: PlanBox, top: number): number {
  return Math.hypot(Math.max(0, boxesApart(box, bounds) - side), Math.max(0, low - top))
}

function nearestStretch({ stretches }: Footing, side: number, bounds: PlanBox, top: number): Stretch | null {
  let least = Number.POSITIVE_INFINITY
  let first: Stretch | null = null
  for (const stretch of stretches) {
    const bound = stretchBound(stretch, side, bounds, top)
    if (bound < least) [least, first] = [bound, stretch]
  }
  return first
}

function sliceBound(s: Slice, side: number, { points, top }: Facet): number {
  const under = Math.max(0, s.z - s.radius - top)
  return Math.hypot(Math.max(0, beside(s, points).distance - side), under)
}

/** What is likely to be nearest first. */
const inOrder = (slices: Slice[], side: number, facet: Facet): Slice[] =>
  slices
    .map((s) => ({ s, bound: sliceBound(s, side, facet) }))
    .sort((a, b) => a.bound - b.bound)
    .map(({ s }) => s)
