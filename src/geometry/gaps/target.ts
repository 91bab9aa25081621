/** Everything in a plan that a fall can hit, each with its own way of being measured against a room. */
import type { Obstacle, Plan, Vec3 } from '../../plan/types'
import type { Room } from '../room/types'
import { lidAt } from '../room/underside'
import { crossFrameSolid, girderSolid, outsideSurface } from './girder-solid'
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
export type MeshTarget = { ok: true; measure: (room: Room) => Measured } | { ok: false; why: string }

export interface Target {
  id: string
  margin: number
  measure: ((room: Room) => Measured) | null
  /** Why it cannot be measured. */
  unknown?: string
}

export const ABOVE = 'lies above the walking surface: no fall from this line comes down on it'
export const UNDER_SURFACE = 'nothing of it sticks out from under the walking surface that the line serves'

/** All obstacles of the plan in their order, then the girders. */
export function targetsOf(plan: Plan, meshes: Map<string, MeshTarget>): Target[] {
  const girders = plan.girders.map((g): Target => {
    const solid = girderSolid(g)
    return { id: g.id, margin: 0, measure: (room) => measureOutside(room, solid) }
  })
  return [...plan.obstacles.map((o) => targetOf(plan, o, meshes)), ...girders]
}

function targetOf(plan: Plan, o: Obstacle, meshes: Map<string, MeshTarget>): Target {
  const common = { id: o.id, margin: o.margin ?? 0 }
  const solid = (s: Solid): Target => ({ ...common, measure: (room) => measureSolid(room, s, s.facets) })
  switch (o.kind) {
    case 'ground':
    case 'water':
      return {
        ...common,
        measure: (room) => ({ point: gapToLevel(room, o.elevation), beside: null }),
      }
    case 'box':
      return solid(boxSolid(o))
    case 'lane':
      return solid(laneSolid(o))
    case 'cross-frame': {
      const found = crossFrameSolid(plan, o)
      if (!found)
        return { ...common, measure: null, unknown: 'one of the girders that it stands between is missing' }
      return { ...common, measure: (room) => measureOutside(room, found) }
    }
    case 'mesh': {
      const mesh = meshes.get(o.id)
      if (mesh?.ok) return { ...common, measure: mesh.measure }
      return { ...common, measure: null, unknown: mesh?.why ?? `the model file ${o.file} was not read` }
    }
  }
}

function measureSolid(room: Room, solid: Solid, facets: Facet[]): Measured {
  if (isAbove(room, solid)) return { point: null, beside: null, note: ABOVE }
  const point = gapToFacets(room, facets)
  if (point) return { point, beside: null }
  const near = planDistance(room, facets)
  return { point, beside: near && { ...near, at: spot(near.at, near.z) } }
}

/** Of girders and bracing only what is not under the line's walking surface. */
function measureOutside(room: Room, solid: Solid): Measured {
  const facets = outsideSurface(solid.facets, room.surface)
  if (facets.length === 0) return { point: null, beside: null, note: UNDER_SURFACE }
  return measureSolid(room, solid, facets)
}

/** Whether a solid lies wholly above the plane of the line's girder, wherever it is. */
function isAbove(room: Room, solid: Solid): boolean {
  return solid.facets.every((f) => f.points.every(([x, y]) => solid.bottom >= lidAt(room, x, y)))
}
