/** One swing: radii and how far it goes, from what the statics say at a station (mechanics section 8). */
import type { RoomSample, RoomWorker } from './types'

export interface Swing {
  /** r, D-ring about the sagged attachment, m. */
  dRing: number
  /** R, feet about the same point, m. */
  feet: number
}

/** Radii of the D-ring and of the feet, m. */
export function swingOf(worker: RoomWorker, sample: RoomSample): Swing {
  const paidOut = worker.type === 'retractable' ? Math.max(0, sample.height - worker.dRingHeight) : 0
  const dRing = worker.length + paidOut + sample.extension
  return { dRing, feet: dRing + worker.harnessStretch + worker.dRingHeight }
}

/** Depth of the feet with marginBelow under them, below the girder's top, m: no max(0) here. */
export function depthOf(worker: RoomWorker, sample: RoomSample, marginBelow: number): number {
  return swingOf(worker, sample).feet - (sample.height - sample.drop) + marginBelow
}

/**
 * How far from the line the connector lets a worker stand, m: sqrt(length^2 - (dRingHeight - height)^2). Who has to
 * stoop to be hooked on can stoop as far as the length. A retractable pays out past its lock-off distance, so that only
 * the edge of the walking surface ends it.
 */
export function connectorReach(worker: RoomWorker, height: number): number {
  if (worker.type === 'retractable') return Number.POSITIVE_INFINITY
  const rest = worker.length ** 2 - (worker.dRingHeight - height) ** 2
  return rest >= 0 ? Math.sqrt(rest) : worker.length
}

/** Reach of the feet in plan, R sin(asin(min(1, r0/r))), m, for a worker who starts r0 from the line. */
export function feetReach(swing: Swing, start: number): number {
  if (swing.dRing <= 0) return 0
  return swing.feet * Math.min(1, start / swing.dRing)
}
