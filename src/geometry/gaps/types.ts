import type { Vec2, Vec3 } from '../../plan/types'
import type { Plane } from '../room/types'

/**
 * A piece of an obstacle's upper side: a convex polygon in plan (counter-clockwise) or a segment of it, and the plane
 * in which its points lie.
 */
export interface Facet {
  points: Vec2[]
  plane: Plane
  /** Greatest elevation in it, m. */
  top: number
  /** Of something that may move: the path of its centre that this piece was swept along. */
  sweep?: Sweep
}

/** A straight move of an obstacle's centre; `edge` is the direction of the swept edge in plan, null where it stands. */
export interface Sweep {
  from: Vec3
  to: Vec3
  origin: Vec2
  edge: Vec2 | null
}

/** Where and how near a room comes to an obstacle. */
export interface GapPoint {
  /** Underside less obstacle, m, the obstacle's margin not yet taken off. */
  gap: number
  /** On the obstacle. */
  at: Vec3
  station: number
  /** Index into the room's corners. */
  corner: number
  /** Where something that moves has its centre then. */
  centre?: Vec3
}

export interface NearestPlace {
  at: Vec3
  line: string
  station: number
  worker: string
}

/** What is told of one obstacle: fits the results contract. */
export interface ObstacleGap {
  id: string
  /** Least vertical distance less the obstacle's own margin, m; negative: clash; null: no shared plan area, or unknown. */
  gap: number | null
  /** On the obstacle, where that is; without a shared area the nearest point in plan. */
  at: Vec3 | null
  line: string | null
  station: number | null
  /** Horizontal distance where the plan areas do not meet, m; null where they do. */
  horizontal: number | null
  /** Least distance in any direction between room and obstacle, m; 0 where they touch; null: not computed. */
  nearest: number | null
  /** Where that is, on the obstacle, and whose fall from which station comes so near; null where it is not told. */
  nearestAt: NearestPlace | null
  /** Worker and corner that govern. */
  worker: string | null
  corner: { line: 'soft' | 'stiff'; connector: 'low' | 'high' } | null
  /** Of an obstacle that travels: where its centre is at the worst. */
  centre?: Vec3
  /** Why the gap is not known. */
  unknown?: string
  /** What a reader must know about this figure. */
  note?: string
}
