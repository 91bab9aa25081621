/** From the plan to plain numbers: everything about one line that the solver and the rules need. */

import { type LineGeometry, lineGeometry } from '../geometry/line'
import { type Engagement, engagedLoops } from '../geometry/loops'
import { type Leg, tieBackLegs } from '../geometry/tie-back'
import type {
  BracketPart,
  ConnectorPart,
  Girder,
  Grip,
  HardwarePart,
  Line,
  LineAbsorberPart,
  Part,
  PartKind,
  PartOf,
  Plan,
  Stanchion,
  StanchionPart,
  TieBack,
  TieBackPart,
  WireRopePart,
  Worker,
} from '../plan/types'
import { type HeadSupport, headStiffness } from '../solver/end-stanchion'
import type { SpanDirection } from '../solver/heads'
import type { LineModel } from '../solver/model'

export interface TieBackInput {
  tieBack: TieBack
  part: TieBackPart
  legs: [Leg, Leg]
}

export interface StanchionInput {
  stanchion: Stanchion
  part: StanchionPart
  bracket: BracketPart
  isEnd: boolean
  tieBacks: TieBackInput[]
  /** Shaft and legs; an intermediate stanchion has no legs that work. */
  support: HeadSupport
  engaged: Engagement
}

export interface LineInput {
  line: Line
  girder: Girder
  rope: WireRopePart
  absorber: LineAbsorberPart | null
  hardware: HardwarePart[]
  stanchions: StanchionInput[]
  workers: { worker: Worker; connector: ConnectorPart }[]
  geometry: LineGeometry
  /** Direction of each span in the girder's own axes. */
  directions: SpanDirection[]
  model: LineModel
  grip: Grip
}

/** A part of the plan by id and kind. `readPlan` has refused plans with dangling references. */
function partOf<K extends PartKind>(plan: Plan, id: string, kind: K): PartOf<K> {
  const part: Part | undefined = plan.parts.find((p) => p.id === id && p.kind === kind)
  if (!part) throw new Error(`part ${id} of kind ${kind} is missing: the plan was not read through readPlan`)
  return part as PartOf<K>
}

function stanchionInput(plan: Plan, girder: Girder, line: Line, index: number): StanchionInput {
  const stanchion = line.stanchions[index]!
  const part = partOf(plan, stanchion.part, 'stanchion')
  const bracket = partOf(plan, stanchion.bracket, 'bracket')
  const last = line.stanchions.length - 1
  const isEnd = index === 0 || index === last
  const away = index === last ? 1 : -1
  const tieBacks = line.tieBacks
    .filter((t) => t.stanchion === stanchion.id)
    .map((tieBack) => ({
      tieBack,
      part: partOf(plan, tieBack.part, 'tie-back'),
      legs: tieBackLegs(girder, stanchion, part.height, away, tieBack),
    }))
  const legs = tieBacks.flatMap((t) =>
    t.legs.map((leg) => ({ ...leg, stiffness: t.part.stiffness, slack: !leg.farSide })),
  )
  return {
    stanchion,
    part,
    bracket,
    isEnd,
    tieBacks,
    support: { headStiffness: part.headStiffness, height: part.height, legs: isEnd ? legs : [] },
    engaged: engagedLoops(girder, stanchion.station, stanchion.offset, bracket.tubeLength),
  }
}

function spanDirections(g: LineGeometry): SpanDirection[] {
  return g.stations.slice(1).map((station, i) => {
    const run = (station - g.stations[i]!) * g.frame.planRate
    const side = g.offsets[i + 1]! - g.offsets[i]!
    const size = Math.hypot(run, side)
    return [run / size, side / size]
  })
}

function lineModel(input: Omit<LineInput, 'model'>): LineModel {
  const { line, rope, absorber, stanchions } = input
  const first = stanchions[0]!
  const last = stanchions[stanchions.length - 1]!
  return {
    x: input.geometry.x,
    z: input.geometry.heads.map((h) => h[2]),
    massPerMetre: rope.massPerMetre,
    thermalExpansion: rope.thermalExpansion,
    axialStiffness: rope.axialStiffness,
    absorber: absorber && {
      onset: absorber.onset,
      full: absorber.full,
      maxExtension: absorber.maxExtension,
    },
    absorberAt: line.absorberAt,
    pretension: line.pretension,
    pretensionTolerance: line.pretensionTolerance,
    installTemperature: line.installTemperature,
    serviceTemperature: line.serviceTemperature,
    endStiffness: [headStiffness(first.support), headStiffness(last.support)],
    endMass: [first.part.mass / 4, last.part.mass / 4],
  }
}

/** Everything about one line, from a plan that `readPlan` has accepted. */
export function lineInput(plan: Plan, line: Line): LineInput {
  const girder = plan.girders.find((g) => g.id === line.girder)
  if (!girder) throw new Error(`girder ${line.girder} is missing: the plan was not read through readPlan`)
  const stanchions = line.stanchions.map((_, i) => stanchionInput(plan, girder, line, i))
  const geometry = lineGeometry(
    girder,
    line,
    stanchions.map((s) => s.part.height),
  )
  const input = {
    line,
    girder,
    rope: partOf(plan, line.wireRope, 'wire-rope'),
    absorber: line.absorber === null ? null : partOf(plan, line.absorber, 'line-absorber'),
    hardware: line.hardware.map((id) => partOf(plan, id, 'hardware')),
    stanchions,
    workers: plan.workers
      .filter((w) => w.line === line.id)
      .map((worker) => ({ worker, connector: partOf(plan, worker.connector, 'connector') })),
    geometry,
    directions: spanDirections(geometry),
    grip: line.grip ?? ('sliding' as const),
  }
  return { ...input, model: lineModel(input) }
}
