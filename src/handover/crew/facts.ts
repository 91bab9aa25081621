/** What a crew needs of one line, as numbers without words: places, loops, lengths, tensions. SI units. */

import { loopsAround, rowOfLine } from '../../drawings/loops'
import { girderFrame } from '../../geometry/girder'
import { engagedLoops, loopNumber } from '../../geometry/loops'
import type { LoopRow, Plan } from '../../plan/types'
import type { LineStudy } from '../../study/line-study'
import type { LineFile } from '../input'
import { type RopeFacts, ropeFacts } from './rope-facts'
import { type TensionAt, tensionTable } from './tension-table'
import { type TieBackPlace, tieBacksOf } from './tie-back-facts'
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

export interface StartFacts {
  row: string
  /** Of the row from the girder's centreline, m, to the left; and how many rows the girder has. */
  offset: number
  rows: number
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
    offset: row.offset,
    rows: study.input.girder.loops.length,
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
