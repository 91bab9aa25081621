/**
 * Girders and bracing as obstacles. The walking surface that a line serves carries its workers: what lies under it cannot
 * be fallen onto. So a girder, its own or a neighbour, counts where it sticks out in plan from under that surface: the
 * neighbour's top, a bottom flange that is wider than the top, bracing between girders.
 */
import type { CrossFrameObstacle, Girder, Plan, Vec2, Vec3 } from '../../plan/types'
import { girderFrame, stationOf, topPoint } from '../girder'
import { doubleArea, subtract } from '../polygon'
import { topOutline } from '../room/surface'
import type { SurfacePiece } from '../room/types'
import { length, sub } from '../vec'
import { facetsOf } from './facet'
import type { Solid } from './solid'
import type { Facet } from './types'

/** The part of each facet that is not under (or above) the walking surface. */
export function outsideSurface(facets: Facet[], surface: SurfacePiece[]): Facet[] {
  return facets.flatMap((facet) => {
    let pieces: Vec2[][] = [facet.points]
    for (const { outline } of surface) pieces = pieces.flatMap((p) => subtract(p, outline))
    return pieces.map((points) => ({ ...facet, points }))
  })
}

/** Top and bottom flange of a girder. */
export function girderSolid(girder: Girder): Solid {
  const { section } = girder
  const flange = (width: number, under: number): Facet[] => {
    const z = [girder.start[2], girder.end[2], girder.end[2], girder.start[2]]
    return facetsOf(topOutline(girder, width).map((p, i): Vec3 => [p[0], p[1], z[i]! - under]))
  }
  return {
    facets: [
      ...flange(section.topWidth, 0),
      ...flange(section.bottomWidth, section.depth - section.bottomThickness),
    ],
    bottom: Math.min(girder.start[2], girder.end[2]) - section.depth,
  }
}

/** A square bar between two points. */
export interface Bar {
  from: Vec3
  to: Vec3
  size: number
}

/**
 * The bars of a cross-frame: two diagonals and a bottom strut between the webs, clear of the flanges; null where a girder
 * is missing. Where the two girders are not parallel, the second is met square to the first at its station.
 */
export function crossFrameBars(plan: Plan, frame: CrossFrameObstacle): Bar[] | null {
  const [a, b] = frame.between.map((id) => plan.girders.find((g) => g.id === id))
  if (!a || !b) return null
  const mid = topPoint(girderFrame(a), frame.station, 0)
  const far = topPoint(girderFrame(b), stationOf(girderFrame(b), mid).station, 0)
  const near = corners(a, mid, far, frame.barSize)
  const other = corners(b, far, mid, frame.barSize)
  return [
    { from: near.top, to: other.bottom, size: frame.barSize },
    { from: other.top, to: near.bottom, size: frame.barSize },
    { from: near.bottom, to: other.bottom, size: frame.barSize },
  ]
}

/** Where bars meet a girder's web, on the side towards the other girder. */
function corners(g: Girder, top: Vec3, towards: Vec3, bar: number): { top: Vec3; bottom: Vec3 } {
  const run = Math.hypot(towards[0] - top[0], towards[1] - top[1]) || 1
  const half = g.section.webThickness / 2
  const x = top[0] + ((towards[0] - top[0]) / run) * half
  const y = top[1] + ((towards[1] - top[1]) / run) * half
  const { depth, topThickness, bottomThickness } = g.section
  return {
    top: [x, y, top[2] - topThickness - bar / 2],
    bottom: [x, y, top[2] - depth + bottomThickness + bar / 2],
  }
}

/** The upper sides of a square bar with one pair of sides upright. */
function barFacets(bar: Bar): Facet[] {
  const run = sub(bar.to, bar.from)
  const size = length(run)
  const flat = Math.hypot(run[0], run[1])
  if (size === 0 || flat === 0) return []
  const across: Vec3 = [-run[1] / flat, run[0] / flat, 0]
  const half = bar.size / 2
  const up: Vec3 = [(-run[0] / size) * (run[2] / flat), (-run[1] / size) * (run[2] / flat), flat / size]
  const corner = (p: Vec3, s: number, u: number): Vec3 => [
    p[0] + (across[0] * s + up[0] * u) * half,
    p[1] + (across[1] * s + up[1] * u) * half,
    p[2] + (across[2] * s + up[2] * u) * half,
  ]
  const high = run[2] >= 0 ? bar.to : bar.from
  const top = facetsOf([
    corner(bar.from, 1, 1),
    corner(bar.from, -1, 1),
    corner(bar.to, -1, 1),
    corner(bar.to, 1, 1),
  ])
  const end = facetsOf([corner(high, 1, 1), corner(high, -1, 1), corner(high, -1, -1), corner(high, 1, -1)])
  return [...top, ...end].filter((f) => f.points.length > 2 && doubleArea(f.points) > 1e-9)
}

/** A cross-frame as a solid; null where one of its girders is missing. */
export function crossFrameSolid(plan: Plan, frame: CrossFrameObstacle): Solid | null {
  const bars = crossFrameBars(plan, frame)
  if (!bars) return null
  const facets = bars.flatMap(barFacets)
  const bottom = Math.min(...bars.flatMap((b) => [b.from[2], b.to[2]])) - frame.barSize
  return facets.length > 0 ? { facets, bottom } : null
}
