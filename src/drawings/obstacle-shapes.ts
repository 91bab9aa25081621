/** What lies below, as seen along one girder: the stations it covers and its top and underside, m above the datum. */
import { crossFrameBars } from '../geometry/gaps/girder-solid'
import type {
  BoxObstacle,
  CrossFrameObstacle,
  Girder,
  LaneObstacle,
  Obstacle,
  Plan,
  Vec3,
} from '../plan/types'
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
  switch (o.kind) {
    case 'ground':
    case 'water': {
      const all = { low: -Infinity, high: Infinity, right: -Infinity, left: Infinity }
      return { ...common, ...all, top: o.elevation, bottom: null }
    }
    case 'box': {
      const centres = [o.center, ...(o.travel ?? [])]
      const corners = centres.flatMap((c) => boxCorners(o, c))
      return { ...common, ...around(corners, frame), travels: centres.length > 1 }
    }
    case 'lane':
      return { ...common, ...around(laneCorners(o), frame) }
    case 'mesh': {
      const bounds = meshes[o.id]
      return bounds ? { ...common, ...around(boundsCorners(bounds.low, bounds.high), frame) } : null
    }
    case 'cross-frame': {
      const corners = frameCorners(plan, o)
      return corners && { ...common, ...around(corners, frame) }
    }
  }
}

/** Under the tops of both girders, and at their undersides; null where one is missing. */
function frameCorners(plan: Plan, o: CrossFrameObstacle): Vec3[] | null {
  const [a, b] = o.between.map((id) => plan.girders.find((g) => g.id === id))
  if (!a || !b) return null
  return [a, b].flatMap((g) => {
    const roll = girderRoll(g)
    return [roll.point(o.station, 0, -o.barSize), roll.point(o.station, 0, -g.section.depth)]
  })
}

/** The bottom strut of bracing as one strip in plan; none where a girder is missing. */
export function frameStrips(plan: Plan, o: CrossFrameObstacle): Vec3[][] {
  const strut = crossFrameBars(plan, o)?.[2]
  if (!strut) return []
  const { from, to, size } = strut
  const run = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  const [sx, sy] = [(-(to[1] - from[1]) / run) * (size / 2), ((to[0] - from[0]) / run) * (size / 2)]
  const beside = ([x, y, z]: Vec3, side: 1 | -1): Vec3 => [x + side * sx, y + side * sy, z]
  return [[beside(from, 1), beside(to, 1), beside(to, -1), beside(from, -1)]]
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
