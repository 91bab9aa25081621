/** A drop as it is played: its history with the free falls in it, and everything else told in the times of that history. */
import { GRAVITY } from '../../solver/model'
import type { FallHistory } from '../../solver/time/types'
import { delayAt, type FreeFall, firstFalls, laterFalls, withFreeFalls } from './lead-in'
import type { DroppedWorker, DropStudy } from './types'

const freeFallTime = (w: DroppedWorker): number => Math.sqrt((2 * (w.dynamic.freeFall ?? 0)) / GRAVITY)

function movedWorker(w: DroppedWorker, later: FreeFall[], h: FallHistory): DroppedWorker {
  const moved = (at: number): number => at + delayAt(later, h, at)
  const taut = w.moments.find((m) => m.what === 'taut')
  return {
    ...w,
    strikes: w.strikes && { ...w.strikes, at: moved(w.strikes.at) },
    moments: w.moments.map((m) => ({
      ...m,
      at: m.what === 'steps off' && taut ? moved(taut.at) - freeFallTime(w) : moved(m.at),
    })),
  }
}

/** Masses by body, kg. */
export function played(study: DropStudy, masses: number[]): DropStudy {
  const h = study.fall.history
  if (!h) return study
  const first = firstFalls(
    h,
    study.workers.map((w) => w.dynamic.freeFall ?? 0),
    study.workers.map((w) => w.drop.delay),
  )
  const later = laterFalls(h)
  const moved = (at: number): number => at + delayAt(later, h, at)
  const { fall, ends } = study
  return {
    ...study,
    workers: study.workers.map((w) => movedWorker(w, later, h)),
    ends: ends && { ...ends, at: moved(ends.at) },
    fall: {
      ...fall,
      tensionAt: { ...fall.tensionAt, time: moved(fall.tensionAt.time) },
      workers: fall.workers.map((w) => ({ ...w, lowestAt: moved(w.lowestAt) })),
      history: withFreeFalls(h, first, later, masses),
    },
  }
}
