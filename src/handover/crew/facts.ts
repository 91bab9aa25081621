/** What a crew needs of one line, as numbers without words: places, loops, lengths, tensions. SI units. */

import { loopsAround, rowOfLine } from '../../drawings/loops'
import { girderFrame } from '../../geometry/girder'
import { engagedLoops, loopNumber } from '../../geometry/loops'
import type { LoopRow, Plan } from '../../plan/types'
import { clampMark, ROPE_TAIL, ropeCutLength, strapLengths } from '../../solver/lengths'
import type { LineStudy } from '../../study/line-study'
import type { LineFile } from '../input'
import { type TensionAt, tensionTable } from './tension-table'
import type { Connector } from './worker-facts'
import { workersOf } from './worker-facts'

export interface PlaceFacts {
  id: string
  isEnd: boolean
  station: number
  /** From the stanchion before, m; null for the first. */
  fromLast: number | null
  offset: number
  before: number | null
  after: number | null
  /** How far past the loop before, m. */
  past: number | null
  /** First and last loop number on the bracket's tube; null: none. */
  tube: [number, number] | null
  plate: number
  part: string
  bracket: string
}

export interface TieBackPlace {
  id: string
  stanchion: string
  strapLoop: number
  tensionerLoop: number
  strapRow: string
  tensionerRow: string
  /** Head to loop, strap and tensioner, m; null where the loop is not there. */
  legs: [number | null, number | null]
  needed: number | null
  left: number | null
  part: string
}

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

export interface StartFacts {
  row: string
  firstLoop: number
  spacing: number
  lastNumber: number
  lastFromEnd: number
}

export interface CrewFacts {
  girder: string
  start: StartFacts | null
  places: PlaceFacts[]
  tieBacks: TieBackPlace[]
  rope: RopeFacts
  temperatures: TensionAt[]
  workers: Connector[]
}

/** Everything about one line that the crew sheet says. */
export function crewFacts(plan: Plan, file: LineFile): CrewFacts {
  const { study, line } = file
  const row = rowOfLine(plan, line)
  return {
    girder: study.input.girder.name,
    start: row ? startFacts(study, row) : null,
    places: placesOf(study, row),
    tieBacks: tieBacksOf(study),
    rope: ropeFacts(study),
    temperatures: tensionTable(study),
    workers: workersOf(study),
  }
}

function startFacts(study: LineStudy, row: LoopRow): StartFacts {
  const { length } = girderFrame(study.input.girder)
  return {
    row: row.id,
    firstLoop: row.first,
    spacing: row.spacing,
    lastNumber: loopNumber(row.count - 1),
    lastFromEnd: length - (row.first + (row.count - 1) * row.spacing),
  }
}

function placesOf(study: LineStudy, row: LoopRow | null): PlaceFacts[] {
  return study.input.stanchions.map(({ stanchion: s, part, bracket, isEnd }, i) => {
    const before = study.input.line.stanchions[i - 1]
    const around = row ? loopsAround(row, s.station) : { before: null, after: null }
    const tube = engagedLoops(study.input.girder, s.station, s.offset, bracket.tubeLength).loops
    const [first, last] = [tube[0], tube.at(-1)]
    return {
      id: s.id,
      isEnd,
      station: s.station,
      fromLast: before ? s.station - before.station : null,
      offset: s.offset,
      ...around,
      past:
        row && around.before !== null ? s.station - (row.first + (around.before - 1) * row.spacing) : null,
      tube: first && last ? [loopNumber(first.index), loopNumber(last.index)] : null,
      plate: s.plate ?? 0,
      part: part.name,
      bracket: bracket.name,
    }
  })
}

function tieBacksOf(study: LineStudy): TieBackPlace[] {
  return study.input.stanchions.flatMap((s) =>
    s.tieBacks.map(({ tieBack, part, legs }): TieBackPlace => {
      const known = legs.every((l) => l.loop !== null)
      const strap = known
        ? strapLengths({
            legs: legs.map((l) => l.length),
            partLength: part.length,
            wrapLength: part.wrapLength,
          })
        : null
      return {
        id: tieBack.id,
        stanchion: tieBack.stanchion,
        strapLoop: loopNumber(tieBack.strapLoop.index),
        tensionerLoop: loopNumber(tieBack.tensionerLoop.index),
        strapRow: tieBack.strapLoop.row,
        tensionerRow: tieBack.tensionerLoop.row,
        legs: [legs[0].loop ? legs[0].length : null, legs[1].loop ? legs[1].length : null],
        needed: strap?.needed ?? null,
        left: strap?.left ?? null,
        part: part.name,
      }
    }),
  )
}

function ropeFacts(study: LineStudy): RopeFacts {
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
