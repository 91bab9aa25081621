/** What lies under a point of the site: for where a body comes to rest, and for what it may strike on its way. */
import { boxOutline } from '../../geometry/gaps/solid'
import { girderFrame, stationOf } from '../../geometry/girder'
import type { LaneObstacle, Obstacle, Plan, Vec2 } from '../../plan/types'

/** The upper side of something at one place in plan. */
export interface Under {
  id: string
  name: string
  kind: Obstacle['kind'] | 'girder'
  /** Elevation of its upper side there, m; of a lane: the top of the clear height kept for traffic. */
  top: number
}

const inside = (outline: Vec2[], x: number, y: number): boolean => {
  let odd = false
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [xi, yi] = outline[i]!
    const [xj, yj] = outline[j]!
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) odd = !odd
  }
  return odd
}

/** Elevation of a lane's clear height under a point, or null beside the lane. */
function laneTop(lane: LaneObstacle, x: number, y: number): number | null {
  let top: number | null = null
  for (let i = 1; i < lane.path.length; i++) {
    const a = lane.path[i - 1]!
    const b = lane.path[i]!
    const size = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (size === 0) continue
    const along = ((x - a[0]) * (b[0] - a[0]) + (y - a[1]) * (b[1] - a[1])) / size
    const across = ((x - a[0]) * (b[1] - a[1]) - (y - a[1]) * (b[0] - a[0])) / size
    if (along < 0 || along > size || Math.abs(across) > lane.width / 2) continue
    const z = a[2] + ((b[2] - a[2]) * along) / size + lane.clearHeight
    if (top === null || z > top) top = z
  }
  return top
}

function topOf(o: Obstacle, x: number, y: number): number | null {
  if (o.kind === 'ground' || o.kind === 'water') return o.elevation
  if (o.kind === 'box') return inside(boxOutline(o), x, y) ? o.center[2] + o.size[2] / 2 : null
  if (o.kind === 'lane') return laneTop(o, x, y)
  return null
}

/** Tops of other girders than `own` under a point. */
function girderTops(plan: Plan, own: string, x: number, y: number): Under[] {
  return plan.girders.flatMap((g): Under[] => {
    if (g.id === own) return []
    const frame = girderFrame(g)
    const { station, offset } = stationOf(frame, [x, y, 0])
    if (station < 0 || station > frame.length || Math.abs(offset) > g.section.topWidth / 2) return []
    return [{ id: g.id, name: g.name, kind: 'girder', top: frame.origin[2] + frame.rise * station }]
  })
}

/**
 * Everything under (x, y) with its top below `below` (elevation, m), highest first. Models and bracing are not looked
 * at here: `unlooked` names them, so that nobody takes their absence for granted.
 */
export function beneath(
  plan: Plan,
  own: string,
  x: number,
  y: number,
  below: number,
): { under: Under[]; unlooked: string[] } {
  const found = plan.obstacles.flatMap((o): Under[] => {
    const top = topOf(o, x, y)
    return top === null ? [] : [{ id: o.id, name: o.name, kind: o.kind, top }]
  })
  const under = [...found, ...girderTops(plan, own, x, y)]
    .filter((u) => u.top < below)
    .sort((a, b) => b.top - a.top)
  const unlooked = plan.obstacles
    .filter((o) => o.kind === 'mesh' || o.kind === 'cross-frame')
    .map((o) => o.name)
  return { under, unlooked }
}
