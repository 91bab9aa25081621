/** Everything in a plan that a fall can hit, each with its own way of being measured against a room. */
import type { Obstacle, Plan, Vec3 } from '../../plan/types'
import type { Room } from '../room/types'
import { lidAt } from '../room/underside'
import { crossFrameSolid, girderSolid, outsideSurface } from './girder-solid'
import { type Near, nearestToFacets, nearestToLevel } from './nearest'
import { gapToFacets, gapToLevel, planDistance, spot } from './room-gap'
import { boxSolid, laneSolid, type Solid } from './solid'
import type { Facet, GapPoint } from './types'

/** What one room says of one obstacle. */
export interface Measured {
  /** null: no shared plan area. */
  point: GapPoint | null
  /** Nearest in plan, where none is shared. */
  beside: { distance: number; at: Vec3; station: number } | null
  note?: string
}

/** A model that was read and indexed for queries, or why it could not be. See mesh.ts. */
/**
 * Nearest place in any direction; null where the room or what counts of the obstacle is empty. `than` is one that is known
 * already, as the place of the least gap: only what is nearer is looked for.
 */
export type Nearest = (room: Room, than: Near | null) => Near | null

export type MeshTarget =
  | { ok: true; content: number; measure: (room: Room) => Measured; nearest: Nearest }
  | { ok: false; why: string }

export interface Target {
  id: string
  /** Everything that its figures depend on beside the room, as one text. */
  key: string
  margin: number
  measure: ((room: Room) => Measured) | null
  nearest: Nearest | null
  /** Why it cannot be measured. */
  unknown?: string
}

export const ABOVE = 'lies above the walking surface: no fall from this line comes down on it'
const UNDER_SURFACE = 'nothing of it sticks out from under the walking surface that the line serves'

/** All obstacles of the plan in their order, then the girders. */
export function targetsOf(plan: Plan, meshes: Map<string, MeshTarget>): Target[] {
  const girders = plan.girders.map(
    (g): Target => ({ id: g.id, key: JSON.stringify(g), margin: 0, ...outsideOf(girderSolid(g)) }),
  )
  return [...plan.obstacles.map((o) => targetOf(plan, o, meshes)), ...girders]
}

type Ways = Pick<Target, 'measure' | 'nearest'>

function targetOf(plan: Plan, o: Obstacle, meshes: Map<string, MeshTarget>): Target {
  const common = { id: o.id, key: JSON.stringify(o), margin: o.margin ?? 0 }
  const unknown = (why: string): Target => ({ ...common, measure: null, nearest: null, unknown: why })
  switch (o.kind) {
    case 'ground':
    case 'water':
      return {
        ...common,
        measure: (room) => ({ point: gapToLevel(room, o.elevation), beside: null }),
        nearest: (room) => nearestToLevel(room, o.elevation),
      }
    case 'box':
      return { ...common, ...solidWays(boxSolid(o)) }
    case 'lane':
      return { ...common, ...solidWays(laneSolid(o)) }
    case 'cross-frame': {
      const found = crossFrameSolid(plan, o)
      if (!found) return unknown('one of the girders that it stands between is missing')
      const between = plan.girders.filter((g) => o.between.includes(g.id))
      return { ...common, key: JSON.stringify([o, between]), ...outsideOf(found) }
    }
    case 'mesh': {
      const mesh = meshes.get(o.id)
      if (!mesh?.ok) return unknown(mesh?.why ?? `the model file ${o.file} was not read`)
      const { measure, nearest, content } = mesh
      return { ...common, key: `${common.key} ${content}`, measure, nearest }
    }
  }
}

const solidWays = (solid: Solid): Ways => ({
  measure: (room) => measureSolid(room, solid, solid.facets),
  nearest: (room, than) => (isAbove(room, solid) ? null : nearestToFacets(room, solid.facets, than)),
})

/** Of girders and bracing only what is not under the line's walking surface. */
const outsideOf = (solid: Solid): Ways => ({
  measure: (room) => measureOutside(room, solid),
  nearest: (room, than) =>
    isAbove(room, solid) ? null : nearestToFacets(room, outsideSurface(solid.facets, room.surface), than),
})

function measureSolid(room: Room, solid: Solid, facets: Facet[]): Measured {
  if (isAbove(room, solid)) return { point: null, beside: null, note: ABOVE }
  const point = gapToFacets(room, facets)
  if (point) return { point, beside: null }
  const near = planDistance(room, facets)
  return { point, beside: near && { ...near, at: spot(near.at, near.z) } }
}

function measureOutside(room: Room, solid: Solid): Measured {
  const facets = outsideSurface(solid.facets, room.surface)
  if (facets.length === 0) return { point: null, beside: null, note: UNDER_SURFACE }
  return measureSolid(room, solid, facets)
}

/** Whether a solid lies wholly above the plane of the line's girder, wherever it is. */
function isAbove(room: Room, solid: Solid): boolean {
  return solid.facets.every((f) => f.points.every(([x, y]) => solid.bottom >= lidAt(room, x, y)))
}
