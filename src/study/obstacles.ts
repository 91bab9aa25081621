/** Rooms of all lines and their gaps to everything below. */
import { gapsOfPlan, type MeshTarget, meshTarget, type ObstacleGap, type ReadModel } from '../geometry/gaps'
import { type Room, roomSizes } from '../geometry/room'
import type { Obstacle, Plan } from '../plan/types'
import type { LineStudy } from './line-study'
import type { ObstacleResult, RoomResults } from './results'
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
  /** Volume, footprint and lowest point; null where they were not asked for. */
  sizes: RoomResults | null
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

/** The rooms of the studied lines, and the gap of every obstacle and girder; `whole`: in any direction too, and the rooms' sizes. */
export function studyObstacles(
  plan: Plan,
  lines: LineStudy[],
  models: Models = new Map(),
  whole = false,
): ObstacleStudy {
  const rooms = lines.map((line) => roomOf(plan, line))
  const gaps = gapsOfPlan(plan, rooms, placedModels(plan, models), whole)
  return {
    rooms,
    gaps: gaps.map((gap) => studiedGap(plan, gap)),
    sizes: whole ? sizesOf(rooms) : null,
  }
}

/** Sizes of the lines' rooms and of their union. Of a room that is not whole nothing is told but why. */
function sizesOf(rooms: Room[]): RoomResults {
  const { each, union } = roomSizes(rooms)
  const missing = rooms.find((room) => room.unknown !== null)?.unknown
  const none = (unknown: string) => ({ volume: null, footprint: null, lowest: null, unknown })
  const lines = rooms.map((room, i) => ({
    id: room.line,
    ...(room.unknown === null ? each[i]! : none(room.unknown)),
  }))
  const shared = each.reduce((sum, r) => sum + r.volume, 0) - union.volume
  if (missing) return { lines, plan: { ...none(missing), shared: null } }
  return { lines, plan: { ...union, shared: Math.max(0, shared) } }
}
