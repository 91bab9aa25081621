/** The upper side of everything under a point in plan: for a body that falls there, or swings over it. */
import type { Girder, MeshObstacle, Obstacle, Plan } from '../../plan/types'
import { contains } from '../polygon'
import { walkingSurface } from '../room/surface'
import type { Box } from './bvh'
import { facetsOf, planeAt } from './facet'
import { crossFrameSolid, girderSolid, outsideSurface } from './girder-solid'
import { meshTarget, modelIndex, type ReadModel } from './mesh'
import { placementOf, toModel, toPlan } from './placed-room'
import { boxSolid, laneSolid } from './solid'
import type { Facet } from './types'

/** Elevation of the highest point at (x, y) that lies under `below`, m; null where there is none. */
export type TopAt = (x: number, y: number, below: number) => number | null

export interface Top {
  id: string
  name: string
  kind: Obstacle['kind'] | 'girder'
  topAt: TopAt
}

/**
 * Everything that lies under a line on this girder. Of girders and bracing only what sticks out from under the girder's
 * walking surface, as for the gaps. `unlooked` names what could not be looked at, so that nobody takes its absence for
 * granted.
 */
export function topsUnder(
  plan: Plan,
  girder: Girder,
  models: Map<string, ReadModel>,
): { tops: Top[]; unlooked: string[] } {
  const surface = walkingSurface(plan, girder)
  const outside = (facets: Facet[]): TopAt => topOfFacets(outsideSurface(facets, surface))
  const unlooked: string[] = []
  const found = plan.obstacles.flatMap((o): Top[] => {
    const topAt = topOfObstacle(plan, o, models, outside)
    if (!topAt) unlooked.push(o.name)
    return topAt ? [{ id: o.id, name: o.name, kind: o.kind, topAt }] : []
  })
  const girders = plan.girders.map(
    (g): Top => ({ id: g.id, name: g.name, kind: 'girder', topAt: outside(girderSolid(g).facets) }),
  )
  return { tops: [...found, ...girders], unlooked }
}

function topOfObstacle(
  plan: Plan,
  o: Obstacle,
  models: Map<string, ReadModel>,
  outside: (facets: Facet[]) => TopAt,
): TopAt | null {
  switch (o.kind) {
    case 'ground':
    case 'water':
      return (_x, _y, below) => (o.elevation < below ? o.elevation : null)
    case 'box':
      return topOfFacets(boxSolid(o).facets)
    case 'lane':
      return topOfFacets(laneSolid(o).facets)
    case 'cross-frame': {
      const solid = crossFrameSolid(plan, o)
      return solid && outside(solid.facets)
    }
    case 'mesh':
      return topOfModel(o, models.get(o.file))
  }
}

const topOfFacets =
  (facets: Facet[]): TopAt =>
  (x, y, below) => {
    const z = highest(facets, x, y, below)
    return z === Number.NEGATIVE_INFINITY ? null : z
  }

function highest(facets: Facet[], x: number, y: number, below: number): number {
  let best = Number.NEGATIVE_INFINITY
  for (const { points, plane } of facets) {
    if (!contains(points, [x, y])) continue
    const z = planeAt(plane, x, y)
    if (z < below && z > best) best = z
  }
  return best
}

/** Of a placed model: the highest triangle under the point, found through its index. Null where it was not read. */
function topOfModel(mesh: MeshObstacle, read: ReadModel | undefined): TopAt | null {
  if (!read?.ok || !meshTarget(mesh, read).ok) return null
  const index = modelIndex(read.value.triangles, mesh.upAxis)
  const placement = placementOf(mesh)
  return (x, y, below) => {
    const [mx, my, most] = toModel(placement, [x, y, below])
    let best = Number.NEGATIVE_INFINITY
    const over = ({ min, max }: Box): boolean =>
      min.x <= mx && mx <= max.x && min.y <= my && my <= max.y && min.z < most
    index.search(
      (box) => (over(box) ? -Math.min(box.max.z, most) : Number.POSITIVE_INFINITY),
      () => -best,
      (corners) => {
        best = Math.max(best, highest(facetsOf(corners), mx, my, most))
      },
    )
    return best === Number.NEGATIVE_INFINITY ? null : toPlan(placement, [mx, my, best])[2]
  }
}
