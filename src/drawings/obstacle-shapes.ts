/** What lies below, as seen along one girder: the stations it covers and its top and underside, m above the datum. */
import type { BoxObstacle, Girder, LaneObstacle, Obstacle, Plan, Vec3 } from '../plan/types'
import { type GirderRoll, girderRoll } from './frame'

export interface SideShape {
  id: string
  name: string
  kind: Obstacle['kind']
  /** Stations covered; a ground or water surface reaches everywhere. */
  low: number
  high: number
  /** Offsets covered, m, positive left. */
  right: number
  left: number
  top: number
  /** null: it reaches down without end. */
  bottom: number | null
  /** Of something that may move: where else its top may be. */
  travels: boolean
}

/** Bounds of model files, by obstacle id, as measured where the file was read. */
export type MeshBounds = Record<string, { low: Vec3; high: Vec3 }>

/** The side view of each obstacle that can be drawn; a model file without bounds is left out. */
export function sideShapes(plan: Plan, girder: Girder, meshes: MeshBounds = {}): SideShape[] {
  const frame = girderRoll(girder)
  return plan.obstacles.flatMap((o) => sideShape(o, frame, plan, meshes) ?? [])
}

function sideShape(o: Obstacle, frame: GirderRoll, plan: Plan, meshes: MeshBounds): SideShape | null {
  const common = { id: o.id, name: o.name, kind: o.kind, travels: false }
  if (o.kind === 'ground' || o.kind === 'water') {
    const all = { low: -Infinity, high: Infinity, right: -Infinity, left: Infinity }
    return { ...common, ...all, top: o.elevation, bottom: null }
  }
  if (o.kind === 'box') {
    const centres = [o.center, ...(o.travel ?? [])]
    const shape = around(
      centres.flatMap((c) => boxCorners(o, c)),
      frame,
    )
    return { ...common, ...shape, travels: centres.length > 1 }
  }
  if (o.kind === 'lane') return { ...common, ...around(laneCorners(o), frame) }
  if (o.kind === 'mesh') {
    const bounds = meshes[o.id]
    return bounds ? { ...common, ...around(boundsCorners(bounds.low, bounds.high), frame) } : null
  }
  const other = plan.girders.find((g) => g.id === o.between[0])
  const far = plan.girders.find((g) => g.id === o.between[1])
  if (!other || !far) return null
  const [a, b] = [other, far].map((g) => ({ frame: girderRoll(g), depth: g.section.depth }))
  const corners = [a!, b!].flatMap(({ frame: f, depth }) => [
    f.point(o.station, 0, -o.barSize),
    f.point(o.station, 0, -depth),
  ])
  return { ...common, ...around(corners, frame) }
}

function around(points: Vec3[], frame: GirderRoll): Omit<SideShape, 'id' | 'name' | 'kind' | 'travels'> {
  const seen = points.map((p) => frame.unroll(p))
  const heights = points.map((p) => p[2])
  return {
    low: Math.min(...seen.map((s) => s.station)),
    high: Math.max(...seen.map((s) => s.station)),
    right: Math.min(...seen.map((s) => s.offset)),
    left: Math.max(...seen.map((s) => s.offset)),
    top: Math.max(...heights),
    bottom: Math.min(...heights),
  }
}

/** The eight corners of a box, turned counter-clockwise about z, about a centre. */
export function boxCorners(box: BoxObstacle, centre: Vec3): Vec3[] {
  const turn = ((box.turn ?? 0) * Math.PI) / 180
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  return boundsCorners([-1, -1, -1], [1, 1, 1]).map(([x, y, z]): Vec3 => {
    const [lx, ly] = [(x * box.size[0]) / 2, (y * box.size[1]) / 2]
    return [centre[0] + c * lx - s * ly, centre[1] + s * lx + c * ly, centre[2] + (z * box.size[2]) / 2]
  })
}

function boundsCorners(low: Vec3, high: Vec3): Vec3[] {
  const pick = (i: number, k: 0 | 1 | 2): number => ((i >> k) & 1 ? high[k] : low[k])
  return Array.from({ length: 8 }, (_, i): Vec3 => [pick(i, 0), pick(i, 1), pick(i, 2)])
}

/** Corners of the clear space above a lane, segment by segment. */
function laneCorners(lane: LaneObstacle): Vec3[] {
  return laneStrips(lane).flatMap((strip) =>
    strip.flatMap(([x, y, z]): Vec3[] => [
      [x, y, z],
      [x, y, z + lane.clearHeight],
    ]),
  )
}

/** The four corners in plan of each straight piece of a lane. */
export function laneStrips(lane: LaneObstacle): [Vec3, Vec3, Vec3, Vec3][] {
  return lane.path.slice(1).map((b, i) => {
    const a = lane.path[i]!
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1
    const n = [
      (-(b[1] - a[1]) / length) * (lane.width / 2),
      ((b[0] - a[0]) / length) * (lane.width / 2),
    ] as const
    const side = (p: Vec3, sign: number): Vec3 => [p[0] + sign * n[0], p[1] + sign * n[1], p[2]]
    return [side(a, 1), side(b, 1), side(b, -1), side(a, -1)]
  })
}
