/** How far the site reaches: for the camera, and for sheets of ground and water that have no ends of their own. */
import type { Obstacle, Plan, Vec3 } from '../plan/types'

export interface Extent {
  min: Vec3
  max: Vec3
}

/** Smallest box round some points; null of none. */
export function extentOf(points: readonly Vec3[]): Extent | null {
  const [first, ...rest] = points
  if (!first) return null
  const box: Extent = { min: [...first], max: [...first] }
  for (const p of rest) {
    for (const i of [0, 1, 2] as const) {
      box.min[i] = Math.min(box.min[i], p[i])
      box.max[i] = Math.max(box.max[i], p[i])
    }
  }
  return box
}

/** Corner points of everything that has ends, obstacles included. */
export function sitePoints(plan: Plan): Vec3[] {
  const girders = plan.girders.flatMap((g): Vec3[] => {
    const half = g.section.topWidth / 2
    return [g.start, g.end].flatMap(([x, y, z]): Vec3[] => [
      [x - half, y - half, z],
      [x + half, y + half, z - g.section.depth],
    ])
  })
  const decks = (plan.decks ?? []).flatMap((d) => d.outline.map(([x, y]): Vec3 => [x, y, d.elevation]))
  return [...girders, ...decks, ...plan.obstacles.flatMap(obstaclePoints)]
}

function obstaclePoints(o: Obstacle): Vec3[] {
  switch (o.kind) {
    case 'box': {
      const reach = Math.hypot(o.size[0], o.size[1]) / 2
      return [o.center, ...(o.travel ?? [])].flatMap(([x, y, z]): Vec3[] => [
        [x - reach, y - reach, z - o.size[2] / 2],
        [x + reach, y + reach, z + o.size[2] / 2],
      ])
    }
    case 'lane':
      return o.path.flatMap(([x, y, z]): Vec3[] => [
        [x - o.width / 2, y - o.width / 2, z],
        [x + o.width / 2, y + o.width / 2, z + o.clearHeight],
      ])
    case 'mesh':
      return o.at ? [o.at] : []
    // Levels have no ends; bracing lies between girders, which are counted.
    case 'ground':
    case 'water':
    case 'cross-frame':
      return []
  }
}

/** Elevation of the lowest level sheet; null where the plan has neither ground nor water. */
export function lowestLevel(plan: Plan): number | null {
  const levels = plan.obstacles.flatMap((o) =>
    o.kind === 'ground' || o.kind === 'water' ? [o.elevation] : [],
  )
  return levels.length > 0 ? Math.min(...levels) : null
}
