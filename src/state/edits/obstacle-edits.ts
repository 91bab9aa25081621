/** What is below and beside: ground, water, boxes, lanes, models, cross-frames. */
import type { Deck, Obstacle, Plan, Vec2, Vec3 } from '../../plan/types'
import { freeName, newId } from './ids'

export type ObstacleKind = Obstacle['kind']

const obstacleWord: Record<ObstacleKind, string> = {
  ground: 'Ground',
  water: 'Water',
  box: 'Box',
  lane: 'Lane',
  mesh: 'Model',
  'cross-frame': 'Cross-frame',
}

type Shape = Obstacle extends infer O ? (O extends Obstacle ? Omit<O, 'id' | 'name'> : never) : never

/** Adds an obstacle of a shape with a free id and name. */
export function addObstacle(plan: Plan, shape: Shape, name = obstacleWord[shape.kind]): string {
  const id = newId(plan, 'O')
  plan.obstacles.push({ ...shape, id, name: freeName(name, plan.obstacles) } as Obstacle)
  return id
}

/** Lowest girder top of the plan, or 0: what new things below are measured from. */
export const lowestTop = (plan: Plan): number => {
  const tops = plan.girders.flatMap((g) => [g.start[2], g.end[2]])
  return tops.length > 0 ? Math.min(...tops) : 0
}

/** Middle of the girders in plan, or the origin. */
export function siteMiddle(plan: Plan): Vec2 {
  const ends = plan.girders.flatMap((g) => [g.start, g.end])
  if (ends.length === 0) return [0, 0]
  const mean = (i: 0 | 1): number => ends.reduce((sum, p) => sum + p[i], 0) / ends.length
  return [mean(0), mean(1)]
}

/** A level of ground or water some way under the girders; the person then types what it is. */
export const addLevel = (plan: Plan, kind: 'ground' | 'water'): string =>
  addObstacle(plan, { kind, elevation: Math.round((lowestTop(plan) - 8) * 10) / 10 })

/** A box of a lorry's size, standing on the ground below a point. */
export function addBox(plan: Plan, at: Vec2, size: Vec3 = [6, 2.5, 3]): string {
  return addObstacle(plan, { kind: 'box', center: [at[0], at[1], groundAt(plan) + size[2] / 2], size })
}

/** The highest ground or water below the girders. */
export function groundAt(plan: Plan): number {
  const levels = plan.obstacles.flatMap((o) =>
    o.kind === 'ground' || o.kind === 'water' ? [o.elevation] : [],
  )
  return levels.length > 0 ? Math.max(...levels) : lowestTop(plan) - 8
}

export function addLane(plan: Plan, path: Vec3[], width = 3.6, clearHeight = 4.5): string | null {
  if (path.length < 2 || !path.flat().every(Number.isFinite)) return null
  return addObstacle(plan, { kind: 'lane', path, width, clearHeight })
}

/** Bracing between two girders at a station of the first. */
export function addCrossFrame(plan: Plan, between: [string, string], station: number): string | null {
  if (between[0] === between[1] || !between.every((id) => plan.girders.some((g) => g.id === id))) return null
  return addObstacle(plan, { kind: 'cross-frame', between, station, barSize: 0.1 })
}

/** A deck by its outline at the level of the girders; at least three corners. */
export function addDeck(plan: Plan, outline: Vec2[], elevation = lowestTop(plan)): string | null {
  if (outline.length < 3 || !outline.flat().every(Number.isFinite)) return null
  const decks: Deck[] = plan.decks ?? []
  const id = newId(plan, 'D')
  decks.push({ id, name: freeName('Deck', decks), outline, elevation })
  plan.decks = decks
  return id
}
