/** Rooms of all lines and their gaps to everything below. */
import { gapsOfPlan, type MeshTarget, meshTarget, type ObstacleGap, type ReadModel } from '../geometry/gaps'
import type { Room } from '../geometry/room'
import type { Obstacle, Plan } from '../plan/types'
import type { LineStudy } from './line-study'
import type { ObstacleResult } from './results'
import { roomOf } from './rooms'

export interface StudiedGap {
  result: ObstacleResult
  name: string
  kind: Obstacle['kind'] | 'girder'
  margin: number
  worker: string | null
}

export interface ObstacleStudy {
  gaps: StudiedGap[]
  /** One for each line, in the plan's order. */
  rooms: Room[]
}

/** Model files that were read, by the name that the plan gives them, or why they could not be. */
export type Models = ReadonlyMap<string, ReadModel>

/** The plan’s models where they stand. */
export function placedModels(plan: Plan, models: Models): Map<string, MeshTarget> {
  return new Map(
    plan.obstacles.flatMap((o) => (o.kind === 'mesh' ? [[o.id, meshTarget(o, models.get(o.file))]] : [])),
  )
}

function studiedGap(plan: Plan, gap: ObstacleGap): StudiedGap {
  const obstacle = plan.obstacles.find((o) => o.id === gap.id)
  const { worker } = gap
  const result: ObstacleResult = gap
  if (obstacle) {
    return { result, name: obstacle.name, kind: obstacle.kind, margin: obstacle.margin ?? 0, worker }
  }
  const girder = plan.girders.find((g) => g.id === gap.id)
  return { result, name: girder?.name ?? gap.id, kind: 'girder', margin: 0, worker }
}

/** The rooms of the studied lines, and the gap of every obstacle and girder; with `nearest` in any direction too. */
export function studyObstacles(
  plan: Plan,
  lines: LineStudy[],
  models: Models = new Map(),
  nearest = false,
): ObstacleStudy {
  const rooms = lines.map((line) => roomOf(plan, line))
  const gaps = gapsOfPlan(plan, rooms, placedModels(plan, models), nearest)
  return { rooms, gaps: gaps.map((gap) => studiedGap(plan, gap)) }
}
