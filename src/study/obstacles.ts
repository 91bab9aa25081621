/** Rooms of all lines and their gaps to everything below. */
import type { Plan } from '../plan/types'
import type { LineStudy } from './line-study'
import type { ObstacleResult } from './results'

export interface StudiedGap {
  result: ObstacleResult
  name: string
  kind: string
  margin: number
  worker: string | null
}

export interface ObstacleStudy {
  gaps: StudiedGap[]
  models?: Map<string, Float32Array>
}

export function studyObstacles(
  _plan: Plan,
  _lines: LineStudy[],
  _models?: ObstacleStudy['models'],
): ObstacleStudy {
  return { gaps: [] }
}
