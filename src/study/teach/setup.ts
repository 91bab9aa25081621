/** What the lessons take from a plan: one line's figures, or those of a built-in example. */
import { topsUnder } from '../../geometry/gaps'
import { midStation, placeOf } from '../../geometry/line'
import type { ConnectorPart, Line, Plan, Worker } from '../../plan/types'
import { beneath } from '../drop/beneath'
import { type LineInput, lineInput } from '../line-input'

/** The four things to grab. */
export type LessonId = 'tie-back' | 'sag' | 'pretension' | 'lanyard'

export interface TeachFigures {
  /** Where they are from, as a person reads it. */
  from: string
  tieBack: {
    pull: number
    height: number
    headStiffness: number
    strapStiffness: number
    limit: number
    /** As it stands, degrees from the vertical. */
    angle: number
  }
  sag: { span: number; force: number }
  lanyard: {
    worker: Pick<Worker, 'mass' | 'dRingHeight' | 'harnessStretch'>
    connector: ConnectorPart
    marginBelow: number
    ground: { name: string; distance: number }
    length: number
    hook: number
  }
}

const exampleConnector: ConnectorPart = {
  id: 'lesson-lanyard',
  name: 'Lanyard with absorber, example figures',
  source: 'example figures: replace with your parts’ documentation',
  kind: 'connector',
  type: 'lanyard',
  length: 1.8,
  stiffness: 60000,
  plateau: { low: 3600, high: 5300 },
  maxExtension: 1.2,
  maxForce: 6000,
  ratedFreeFall: 1.8,
}

/** A post hinged at its foot, so that the strap carries all: the closed form is seen pure. */
export const exampleFigures: TeachFigures = {
  from: 'built-in example: a post hinged at its foot, example figures',
  tieBack: { pull: 10000, height: 1.067, headStiffness: 1e-3, strapStiffness: 250000, limit: 45, angle: 60 },
  sag: { span: 12, force: 4000 },
  lanyard: {
    worker: { mass: 100, dRingHeight: 1.5, harnessStretch: 0.3 },
    connector: exampleConnector,
    marginBelow: 0.9,
    ground: { name: 'the ground', distance: 5 },
    length: 1.8,
    hook: 1.5,
  },
}

const longestSpan = (x: number[]): number => x.slice(1).reduce((most, v, i) => Math.max(most, v - x[i]!), 0)

/** Room under the middle of a line's first span; the example's where the plan has nothing there. */
function groundUnder(plan: Plan, input: LineInput): TeachFigures['lanyard']['ground'] {
  const [x, y, surface] = placeOf(input.geometry, midStation(input.geometry, 0)).top
  const first = beneath(topsUnder(plan, input.girder, new Map()).tops, x, y, surface)[0]
  return first ? { name: first.name, distance: surface - first.top } : exampleFigures.lanyard.ground
}

/**
 * The figures of a line. `pull` and `force` (N) are what its study found to govern; null: the example's stand in, and
 * `from` says so.
 */
export function planFigures(plan: Plan, line: Line, pull: number | null, force: number | null): TeachFigures {
  const input = lineInput(plan, line)
  const end = input.stanchions[0]!
  const leg = end.tieBacks[0]?.legs[0]
  const strap = end.tieBacks[0]?.part.stiffness
  const lanyard = input.workers.find((w) => w.connector.type === 'lanyard')
  const { tieBack, sag, lanyard: example } = exampleFigures
  const lent = [
    ...(pull === null || force === null ? ['forces'] : []),
    ...(strap === undefined ? ['strap'] : []),
    ...(lanyard ? [] : ['lanyard']),
  ]
  const who = lanyard ?? { worker: input.workers[0]?.worker ?? example.worker, connector: example.connector }
  return {
    from: `${line.name || line.id}${lent.length > 0 ? `; example figures for: ${lent.join(', ')}` : ''}`,
    tieBack: {
      pull: pull ?? tieBack.pull,
      height: end.part.height,
      headStiffness: end.part.headStiffness,
      strapStiffness: strap ?? tieBack.strapStiffness,
      limit: plan.basis.minTieBackAngle,
      angle: leg && Number.isFinite(leg.angle) ? leg.angle : tieBack.angle,
    },
    sag: { span: longestSpan(input.geometry.x), force: force ?? sag.force },
    lanyard: {
      worker: who.worker,
      connector: who.connector,
      marginBelow: plan.basis.marginBelow,
      ground: groundUnder(plan, input),
      length: who.connector.length,
      hook: end.part.height,
    },
  }
}
