/** Where the rope is cut and marked, how its eye lies, and what tension to show. SI units. */
import { clampMark, ROPE_TAIL, ropeCutLength } from '../../solver/lengths'
import type { LineStudy } from '../../study/line-study'

export interface RopeFacts {
  /** Ids of the stanchions that carry the clamp and the tensioner. */
  clampAt: string
  tensionerAt: string
  cut: number | null
  mark: number | null
  tail: number
  eyeOffset: number | null
  takeUp: number | null
  tension: number
  tolerance: number
  installTemperature: number
}

export function ropeFacts(study: LineStudy): RopeFacts {
  const { line } = study.input
  const [first, last] = [line.stanchions[0]?.id ?? '', line.stanchions.at(-1)?.id ?? '']
  const length = study.results.installed.wireRopeLength
  const stretch = study.installed.takeUp?.constructional ?? null
  const mark = length === null || stretch === null ? null : clampMark(length, stretch)
  return {
    clampAt: line.absorberAt === 'end' ? first : last,
    tensionerAt: line.absorberAt === 'end' ? last : first,
    cut: mark === null ? null : ropeCutLength(mark),
    mark,
    tail: ROPE_TAIL,
    eyeOffset: study.results.installed.eyeOffset,
    takeUp: study.results.installed.takeUp,
    tension: line.pretension,
    tolerance: line.pretensionTolerance,
    installTemperature: line.installTemperature,
  }
}
