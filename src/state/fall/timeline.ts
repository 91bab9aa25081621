/** Between frames and times of a fall's history. */
import type { DropStudy, Moment } from '../../study/drop'
import { once } from '../derived'

/** From first picture to where the model ends, s. */
export interface Timeline {
  times: Float64Array
  from: number
  to: number
}

export const timelineOf = once((study: DropStudy): Timeline | null => {
  const times = study.fall.history?.times
  if (!times || times.length === 0) return null
  const last = times[times.length - 1]!
  return { times, from: times[0]!, to: study.ends ? Math.min(study.ends.at, last) : last }
})

/** Frame at a time, between two where it lies between; ends are clamped. */
export function frameAt(times: Float64Array, time: number): number {
  let [low, high] = [0, times.length - 1]
  if (time <= times[0]!) return 0
  if (time >= times[high]!) return high
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (times[middle]! <= time) low = middle
    else high = middle
  }
  return low + (time - times[low]!) / (times[high]! - times[low]!)
}

/** Time at a frame, s. */
export function timeAt(times: Float64Array, frame: number): number {
  const within = Math.min(times.length - 1, Math.max(0, frame))
  const low = Math.floor(within)
  const high = Math.min(times.length - 1, low + 1)
  return times[low]! + (times[high]! - times[low]!) * (within - low)
}

/** A row of figures at a frame, between two where it lies between. */
export const valueAt = (values: Float64Array, frame: number): number => timeAt(values, frame)

/** Moments of all who fall, in order of time, within what can be played. */
export function shownMoments(study: DropStudy, to: number): (Moment & { worker: number })[] {
  return study.workers
    .flatMap((w, worker) => w.moments.map((m) => ({ ...m, worker })))
    .filter((m) => m.at <= to + 1e-9)
    .sort((a, b) => a.at - b.at)
}
