/** What a typed deck or lane begins with, so that figures are changed and not invented. Metres. */
import type { Plan, Vec2, Vec3 } from '../../plan/types'
import { groundAt, siteMiddle } from './obstacle-edits'

/** From the first girder to the last, along their whole tops; empty where there are fewer than two. */
export function deckBetween(plan: Plan): Vec2[] {
  const [first, last] = [plan.girders[0], plan.girders.at(-1)]
  if (!first || !last || first === last) return []
  const flat = ([x, y]: Vec3): Vec2 => [x, y]
  return [flat(first.start), flat(first.end), flat(last.end), flat(last.start)]
}

/** Square across under the middle of the girders, 20 m to both sides, on the ground; empty without girders. */
export function laneUnder(plan: Plan): Vec3[] {
  const girder = plan.girders[0]
  if (!girder) return []
  const [dx, dy] = [girder.end[0] - girder.start[0], girder.end[1] - girder.start[1]]
  const length = Math.hypot(dx, dy) || 1
  const [x, y] = siteMiddle(plan)
  const z = groundAt(plan)
  const at = (by: number): Vec3 => [x - (dy / length) * by, y + (dx / length) * by, z]
  return [at(-20), at(20)]
}
