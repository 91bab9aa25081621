/** Moves and turns things about in plan. Lines move with their girders: they have no place of their own. */
import type { Obstacle, Plan, Vec2, Vec3 } from '../../plan/types'
import { type Ref, resolveRef } from '../refs'
import { tidy } from './gaps'
import { shifted } from './girder-edits'

type Move = (p: Vec3) => Vec3

/** Shifts what can be shifted by a vector, m; false where none of it can. */
export const moveRefs = (plan: Plan, refs: readonly Ref[], by: Vec3): boolean =>
  applyMove(plan, refs, (p) => shifted(p, by), 0)

/** Turns about a point, degrees counter-clockwise from above. */
export function turnRefs(plan: Plan, refs: readonly Ref[], degrees: number, about: Vec2): boolean {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
  const turn: Move = ([x, y, z]) => [
    tidy(about[0] + (x - about[0]) * c - (y - about[1]) * s),
    tidy(about[1] + (x - about[0]) * s + (y - about[1]) * c),
    z,
  ]
  return applyMove(plan, refs, turn, degrees)
}

function applyMove(plan: Plan, refs: readonly Ref[], move: Move, degrees: number): boolean {
  let moved = false
  for (const ref of refs) {
    const found = resolveRef(plan, ref)
    if (found?.kind === 'girder') {
      found.girder.start = move(found.girder.start)
      found.girder.end = move(found.girder.end)
      moved = true
    } else if (found?.kind === 'deck') {
      const level = found.deck.elevation
      const at = found.deck.outline.map(([x, y]) => move([x, y, level]))
      found.deck.outline = at.map(([x, y]): Vec2 => [x, y])
      found.deck.elevation = at[0]?.[2] ?? level
      moved = true
    } else if (found?.kind === 'obstacle') {
      moved = moveObstacle(found.obstacle, move, degrees) || moved
    }
  }
  return moved
}

function moveObstacle(o: Obstacle, move: Move, degrees: number): boolean {
  const turn = (thing: { turn?: number }): void => {
    if (degrees !== 0) thing.turn = tidy((thing.turn ?? 0) + degrees)
  }
  switch (o.kind) {
    case 'box':
      o.center = move(o.center)
      if (o.travel) o.travel = o.travel.map(move)
      turn(o)
      return true
    case 'lane':
      o.path = o.path.map(move)
      return true
    case 'mesh':
      o.at = move(o.at ?? [0, 0, 0])
      turn(o)
      return true
    // Levels are everywhere; bracing goes with its girders.
    case 'ground':
    case 'water':
    case 'cross-frame':
      return false
  }
}

/** Middle of what is meant, in plan, to turn about. */
export function middleOf(plan: Plan, refs: readonly Ref[]): Vec2 {
  const points = refs.flatMap((ref) => pointsOf(plan, ref))
  if (points.length === 0) return [0, 0]
  const mid = (i: 0 | 1): number => {
    const values = points.map((p) => p[i])
    return (Math.min(...values) + Math.max(...values)) / 2
  }
  return [mid(0), mid(1)]
}

/** The points that say where a thing is. */
export function pointsOf(plan: Plan, ref: Ref): Vec3[] {
  const found = resolveRef(plan, ref)
  if (found?.kind === 'girder') return [found.girder.start, found.girder.end]
  if (found?.kind === 'deck') return found.deck.outline.map(([x, y]) => [x, y, found.deck.elevation])
  if (found?.kind !== 'obstacle') return []
  return obstaclePoints(found.obstacle)
}

/** Puts one of those points of a girder or a deck somewhere, m; a deck keeps its elevation. */
export function putPoint(plan: Plan, ref: Ref, index: number, at: Vec3): void {
  const found = resolveRef(plan, ref)
  if (found?.kind === 'girder') found.girder[index === 0 ? 'start' : 'end'] = at
  if (found?.kind === 'deck') found.deck.outline[index] = [at[0], at[1]]
}

function obstaclePoints(o: Obstacle): Vec3[] {
  switch (o.kind) {
    case 'box':
      return [o.center]
    case 'lane':
      return o.path
    case 'mesh':
      return [o.at ?? [0, 0, 0]]
    case 'ground':
    case 'water':
    case 'cross-frame':
      return []
  }
}
