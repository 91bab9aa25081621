/** Dropping workers on a line: what is asked, and everything the picture, the plots and the rescue plan need. */
import type { Vec3 } from '../../plan/types'
import type { Corner } from '../../solver/model'
import type { TimeFall } from '../../solver/time/types'
import type { Fall } from '../results'
import type { Under } from './beneath'
import type { DropStack } from './stack'

export interface Drop {
  worker: string
  /** m along the girder, between the first and the last stanchion. */
  station: number
  /** s after the first; only where all fall together. */
  delay: number
}

export interface DropRequest {
  line: string
  drops: Drop[]
  order: 'together' | 'in-turn'
  corner: Corner
}

/** Moments of one fall, s from when the first connector would come taut. */
export interface Moment {
  at: number
  what: 'steps off' | 'taut' | 'line absorber gives' | 'lowest' | 'rebound' | 'strikes'
  text: string
}

/** A swing from the edge of the walking surface to under the line, a pendulum without loss. */
export interface Swing {
  /** Radius of the D-ring and where it begins sideways, m. */
  radius: number
  offset: number
  /** Height lost, m, and speed at the bottom, m/s: v = sqrt(2 g drop). */
  drop: number
  speed: number
  /** Something in the way: how fast and at what elevation the feet meet it. */
  strikes: { what: Under; speed: number; elevation: number } | null
}

/** Where a body hangs when all is still. */
export interface Rest {
  /** D-ring and feet, elevation, m. */
  dRing: number
  feet: number
  /** D-ring below the walking surface, m. */
  belowEdge: number
  at: Vec3
  under: Under[]
  unlooked: string[]
}

export interface DroppedWorker {
  drop: Drop
  name: string
  /** Elevation of the walking surface under them, m. */
  surface: number
  /** The summands of the clearance beside what is there; null where one is not known. */
  stack: DropStack | null
  /** By energy at the same place and corner; null where it could not be computed. */
  energy: Fall | null
  /** By time: the same figures. */
  dynamic: Fall
  moments: Moment[]
  swing: Swing | null
  rest: Rest | null
  /** The body meets something on its way down: what, when and how fast; the model ends there. */
  strikes: { what: Under; at: number; speed: number } | null
}

export interface DropStudy {
  request: DropRequest
  /** Heads of the line's stanchions in order, as measured. */
  heads: Vec3[]
  /** With its history, free falls included: times may be negative, 0 is when the first connector comes taut. */
  fall: TimeFall
  workers: DroppedWorker[]
  /** From when on the picture means nothing, s, and why; null: it holds throughout. */
  ends: { at: number; why: string } | null
  /** Breaking strength of the rope times its termination, N. */
  ropeStrength: number
}
