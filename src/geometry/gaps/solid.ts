/** Obstacles as facets: what a body can come down on. Plain solids only; ground, water and models have their own files. */
import type { BoxObstacle, LaneObstacle, Vec2, Vec3 } from '../../plan/types'
import { radians } from '../vec'
import { facetsOf, levelFacet } from './facet'
import type { Facet } from './types'

export interface Solid {
  facets: Facet[]
  /** Lowest elevation, m. */
  bottom: number
}

/** Corners of a box in plan, turned counter-clockwise from above, about a centre. */
function boxOutline(box: BoxObstacle, centre: Vec3 = box.center): Vec2[] {
  const c = Math.cos(radians(box.turn ?? 0))
  const s = Math.sin(radians(box.turn ?? 0))
  const signs: Vec2[] = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ]
  return signs.map(([i, k]) => {
    const x = (i * box.size[0]) / 2
    const y = (k * box.size[1]) / 2
    return [centre[0] + c * x - s * y, centre[1] + s * x + c * y]
  })
}

/** A box, standing or moving. Between two places its upper side is the one at either place and what its edges sweep. */
export function boxSolid(box: BoxObstacle): Solid {
  const places = [box.center, ...(box.travel ?? [])]
  const half = box.size[2] / 2
  const facets = places.flatMap((centre, i) => {
    const here = levelFacet(boxOutline(box, centre), centre[2] + half, {
      from: centre,
      to: centre,
      origin: [centre[0], centre[1]],
      edge: null,
    })
    const next = places[i + 1]
    return next ? [here, ...sweptFacets(box, centre, next)] : [here]
  })
  return { facets, bottom: Math.min(...places.map((p) => p[2])) - half }
}

function sweptFacets(box: BoxObstacle, from: Vec3, to: Vec3): Facet[] {
  const start = boxOutline(box, from)
  const end = boxOutline(box, to)
  const [low, high] = [from[2] + box.size[2] / 2, to[2] + box.size[2] / 2]
  return start.flatMap((a, i) => {
    const k = (i + 1) % 4
    const [b, c, d] = [start[k]!, end[k]!, end[i]!]
    const sweep = { from, to, origin: a, edge: [b[0] - a[0], b[1] - a[1]] as Vec2 }
    return facetsOf(
      [
        [...a, low],
        [...b, low],
        [...c, high],
        [...d, high],
      ],
      sweep,
    )
  })
}

/** Where a moving box has its centre while the point (x, y) of a swept facet is its upper edge. */
export function centreAt(facet: Facet, x: number, y: number): Vec3 | undefined {
  const s = facet.sweep
  if (!s) return undefined
  const mx = s.to[0] - s.from[0]
  const my = s.to[1] - s.from[1]
  if (!s.edge) return s.from
  const det = mx * s.edge[1] - my * s.edge[0]
  if (Math.abs(det) < 1e-12) return s.from
  const share = ((x - s.origin[0]) * s.edge[1] - (y - s.origin[1]) * s.edge[0]) / det
  const k = Math.min(1, Math.max(0, share))
  return [s.from[0] + mx * k, s.from[1] + my * k, s.from[2] + (s.to[2] - s.from[2]) * k]
}

/** Corners in plan of a lane's joint: an eight-sided figure that holds the circle of its width. */
function jointOutline(p: Vec3, width: number): Vec2[] {
  const radius = width / 2 / Math.cos(Math.PI / 8)
  return Array.from({ length: 8 }, (_, i): Vec2 => {
    const angle = (Math.PI * (2 * i + 1)) / 8
    return [p[0] + radius * Math.cos(angle), p[1] + radius * Math.sin(angle)]
  })
}

/** The clear space that traffic needs: a strip along the path, up to clearHeight above it, with rounded bends. */
export function laneSolid(lane: LaneObstacle): Solid {
  const { path, width, clearHeight } = lane
  const strips = path.slice(1).flatMap((b, i) => stripFacets(path[i]!, b, width, clearHeight))
  const joints = path.slice(1, -1).map((p) => levelFacet(jointOutline(p, width), p[2] + clearHeight))
  return { facets: [...strips, ...joints], bottom: Math.min(...path.map((p) => p[2])) }
}

function stripFacets(a: Vec3, b: Vec3, width: number, clearHeight: number): Facet[] {
  const run = Math.hypot(b[0] - a[0], b[1] - a[1])
  if (run === 0) return []
  const nx = (-(b[1] - a[1]) / run) * (width / 2)
  const ny = ((b[0] - a[0]) / run) * (width / 2)
  const at = (p: Vec3, side: number): Vec3 => [p[0] + side * nx, p[1] + side * ny, p[2] + clearHeight]
  return facetsOf([at(a, 1), at(a, -1), at(b, -1), at(b, 1)])
}
