/** What the pictures need beside the results document: shapes in space, made by the study, never computed elsewhere. */
import type { Vec3 } from '../plan/types'
import type { Fall } from './results'

export interface LineDetail {
  id: string
  /** Heads of the stanchions in order. */
  heads: Vec3[]
  /** The rope as installed (nominal), a polyline from first to last head. */
  installedRope: Vec3[]
  /** The energy fall with the greatest clearance at the line's own grip, or null where none could be computed. */
  governing: Fall | null
  /** The rope of that fall at its lowest, through every head. */
  saggedRope: Vec3[]
  /** Where the connector hangs on the sagged rope, and the feet of the body then (margin not included). */
  hangingAt: Vec3 | null
  feetAt: Vec3 | null
}
