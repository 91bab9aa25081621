/** Everything the study knows about one line. It depends on that line, its girder, parts, crew and basis alone. */
import type { Basis, Line, Plan } from '../plan/types'
import type { LineFacts } from '../rules/context'
import { besideFalls, type FallCase, midSpanFalls } from './energy-falls'
import { spanExcess } from './excess'
import { lineFacts, worstOf } from './facts'
import { type FloorStation, floorOf, floorStations } from './floor'
import { type InstalledStudy, installedStudy } from './installed'
import { type LineInput, lineInput } from './line-input'
import { type LineStatics, lineStatics } from './line-statics'
import type { Fall, LineResults } from './results'
import { casesOf, stanchionResult } from './stanchions'
import { type StudiedFall, studiedEnergyFall } from './studied-fall'

export interface LineStudy {
  id: string
  /** The basis' margin under the lowest point of the body, m. */
  marginBelow: number
  input: LineInput
  statics: LineStatics
  installed: InstalledStudy
  /** Falls by energy as solved, in the order of `results.falls`. */
  energyCases: FallCase[]
  falls: { energy: StudiedFall[]; dynamic: StudiedFall[]; noDynamic: string | null }
  floor: FloorStation[]
  /** Per span: what the worst fall in time needs beyond the worst by energy, m. */
  excess: number[]
  facts: LineFacts
  results: LineResults
}

/** Falls in time of one line, or why there are none. */
export type TimeFalls = (input: LineInput, statics: LineStatics, basis: Basis) => StudiedFall[] | string

const worstValue = (falls: StudiedFall[], figure: (f: Fall) => number | null): number | null => {
  const worst = worstOf(falls, figure).value
  return typeof worst === 'number' ? worst : null
}

function governing(input: LineInput, own: StudiedFall[]): LineResults['governing'] {
  const tension = worstValue(own, (f) => f.tension)
  const strength = input.rope.breakingStrength * input.rope.termination
  return {
    tension,
    arrestForce: worstValue(own, (f) => f.arrestForce),
    clearance: worstValue(own, (f) => f.clearance),
    wireRopeSafetyFactor: tension === null ? null : strength / tension,
  }
}

/** Studies one line of a plan; `timeFalls` is left out where only the energy method is wanted. */
export function studyLine(plan: Plan, line: Line, timeFalls: TimeFalls): LineStudy {
  const input = lineInput(plan, line)
  const statics = lineStatics(input.model)
  const installed = installedStudy(input, statics)
  const energyCases = midSpanFalls(input, statics)
  const energy = energyCases.map((c) => studiedEnergyFall(c, plan.basis.marginBelow))
  const timed = timeFalls(input, statics, plan.basis)
  const dynamic = typeof timed === 'string' ? [] : timed
  const falls = { energy, dynamic, noDynamic: typeof timed === 'string' ? timed : null }
  const own = [...energy, ...dynamic].filter((f) => f.fall.grip === input.grip)
  const excess = spanExcess(input, own)
  const floor = floorOf(input, statics, plan.basis.marginBelow, floorStations(input), excess)
  const ownEnergy = energy.filter((f) => f.fall.grip === input.grip)
  return {
    id: line.id,
    marginBelow: plan.basis.marginBelow,
    input,
    statics,
    installed,
    energyCases,
    falls,
    floor,
    excess,
    facts: lineFacts(input, installed, { ...falls, beside: besideFalls(input) }),
    results: {
      id: line.id,
      installed: installed.results,
      falls: [...energy, ...dynamic].map((f) => f.fall),
      governing: governing(input, own),
      stanchions: input.stanchions.map((s, i) => stanchionResult(s, casesOf(input, i, ownEnergy))),
      floor: floor.map((f) => f.point),
    },
  }
}
