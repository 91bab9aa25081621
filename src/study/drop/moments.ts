import { GRAVITY } from '../../solver/model'
import type { FallHistory, TimeFall } from '../../solver/time/types'
import type { DroppedWorker, Moment } from './types'

/** The first frame after `from` at which the body stops rising, or null. */
function reboundAt(h: FallHistory, index: number, from: number): number | null {
  for (let f = 1; f < h.frames - 1; f++) {
    if (h.times[f]! <= from) continue
    const z = (k: number): number => h.workerZ[k * h.workers + index]!
    if (z(f) >= z(f - 1) && z(f) > z(f + 1)) return h.times[f]!
  }
  return null
}

const firstFrame = (h: FallHistory, holds: (f: number) => boolean): number | null => {
  for (let f = 0; f < h.frames; f++) if (holds(f)) return h.times[f]!
  return null
}

/**
 * The marked moments of one body's fall. Stepping off lies before the history begins for the first to fall: the free
 * fall takes sqrt(2 h/g).
 */
export function momentsOf(fall: TimeFall, index: number, strikes: DroppedWorker['strikes']): Moment[] {
  const h = fall.history
  const body = fall.workers[index]!
  if (!h) return []
  const taut = firstFrame(h, (f) => h.connectorForce[f * h.workers + index]! > 0)
  const gives = firstFrame(h, (f) => h.absorberExtension[f]! > h.absorberExtension[0]! + 1e-6)
  const rebound = reboundAt(h, index, body.lowestAt)
  const moments: (Moment | null)[] = [
    taut === null
      ? null
      : { at: taut - Math.sqrt((2 * body.freeFall) / GRAVITY), what: 'steps off', text: 'steps off' },
    taut === null ? null : { at: taut, what: 'taut', text: 'connector taut' },
    gives === null ? null : { at: gives, what: 'line absorber gives', text: 'line absorber gives' },
    strikes && { at: strikes.at, what: 'strikes', text: `strikes ${strikes.what.name}` },
    { at: body.lowestAt, what: 'lowest', text: 'lowest point' },
    rebound === null ? null : { at: rebound, what: 'rebound', text: 'top of the rebound' },
  ]
  return moments.filter((m): m is Moment => m !== null).sort((a, b) => a.at - b.at)
}
