/** Where a drawn point comes to lie: on a girder's end near by, at a right angle with Shift, on the grid otherwise. */
import type { Plan, Vec3 } from '../../plan/types'
import { app } from '../store'

/** A girder's end takes the point within this, m. */
const END_REACH = 0.6

export function snapPoint(
  plan: Plan,
  before: Vec3[],
  at: Vec3,
  keys: { shift?: boolean; alt?: boolean },
): Vec3 {
  if (keys.alt) return at
  const end = nearEnd(plan, at)
  if (end) return end
  const [x, y, z] = toGrid(at)
  const last = before.at(-1)
  return keys.shift && last ? square(last, [x, y, z]) : [x, y, last ? last[2] : z]
}

function nearEnd(plan: Plan, at: Vec3): Vec3 | null {
  for (const girder of plan.girders) {
    for (const end of [girder.start, girder.end]) {
      if (Math.hypot(end[0] - at[0], end[1] - at[1]) < END_REACH) return [...end]
    }
  }
  return null
}

/** Half a foot or a tenth of a metre, whichever the window counts in. */
function toGrid([x, y, z]: Vec3): Vec3 {
  const step = app.getState().units === 'us' ? 0.1524 : 0.1
  const round = (v: number): number => Math.round(Math.round(v / step) * step * 1e4) / 1e4
  return [round(x), round(y), z]
}

/** Along x or along y from the last point, whichever is longer. */
const square = (last: Vec3, at: Vec3): Vec3 =>
  Math.abs(at[0] - last[0]) >= Math.abs(at[1] - last[1])
    ? [at[0], last[1], last[2]]
    : [last[0], at[1], last[2]]
