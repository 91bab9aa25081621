/**
 * The sum behind every number of a study (made only when asked for). Rules know the comparison; this adds how the
 * compared figure came about, from the solver's own figures, so that screen, paper and tests read the same tree.
 */
import type { Plan } from '../../plan/types'
import { explainFinding as explainByRule } from '../../rules'
import type {
  Demand,
  LineFacts,
  ObstacleFacts,
  RuleContext,
  StanchionFacts,
  TieBackFacts,
  WorkerFacts,
} from '../../rules/context'
import type { Finding } from '../../rules/finding'
import { derived, type Explained, found, given } from '../../solver/explain'
import { explainClearance, explainDepth } from '../../solver/explain-fall'
import { explainEyeOffset, explainTakeUp } from '../../solver/explain-line'
import { CONSTRUCTIONAL_STRETCH } from '../../solver/lengths'
import { reachesAt } from '../floor'
import type { LineStudy } from '../line-study'
import type { Study } from '../study'
import { explainFigure, explainTension, type Figure } from './falls'
import { caseOf, figuresOf, reachFigures } from './figures'
import { explainDemand, explainStanchion, mostPulled, type StanchionExplained } from './stanchions'

/** The sum behind a finding; null where its subject or its number is not there. */
export const explainFinding = (study: Study, finding: Finding): Explained | null =>
  explainByRule(explainedContext(study), finding)

/** The facts of a study with the sums behind them. */
function explainedContext(study: Study): RuleContext {
  const { context, plan } = study
  return {
    ...context,
    lines: study.lines.map((line) => explainedLine(plan, line)),
    obstacles: context.obstacles.map((o) => explainedObstacle(study, o)),
  }
}

function explainedLine(plan: Plan, line: LineStudy): LineFacts {
  const { facts } = line
  const tension = (d: Demand): Demand => ({ ...d, explain: () => explainTension(plan, line, facts, d) })
  return {
    ...facts,
    tension: tension(facts.tension),
    heldTension: tension(facts.heldTension),
    absorberExtension: facts.absorberExtension && withFigure(plan, line, facts.absorberExtension, 'absorber'),
    explainEyeOffset: () => explainEye(line),
    workers: facts.workers.map((w) => explainedWorker(plan, line, w)),
    stanchions: facts.stanchions.map((s, i) => explainedStanchion(line, s, i)),
    tieBacks: facts.tieBacks.map((t) => explainedTieBack(line, t)),
  }
}

const withFigure = (plan: Plan, line: LineStudy, d: Demand, figure: Figure): Demand => ({
  ...d,
  explain: () => explainFigure(plan, line, d, figure),
})

const explainedWorker = (plan: Plan, line: LineStudy, w: WorkerFacts): WorkerFacts => ({
  ...w,
  freeFall: withFigure(plan, line, w.freeFall, 'freeFall'),
  arrestForce: withFigure(plan, line, w.arrestForce, 'arrestForce'),
  extension: withFigure(plan, line, w.extension, 'extension'),
  torn: withFigure(plan, line, w.torn, 'torn'),
})

function explainedStanchion(line: LineStudy, s: StanchionFacts, index: number): StanchionFacts {
  const of = (d: Demand, pick: (e: StanchionExplained) => Explained | null): Demand => {
    const explain = explainDemand(line, index, d, pick)
    return explain ? { ...d, explain } : d
  }
  return {
    ...s,
    shaft: of(s.shaft, (e) => e.head.shaft),
    axial: of(s.axial, (e) => e.head.axial),
    heldShaft: of(s.heldShaft, (e) => e.head.shaft),
    heldAxial: of(s.heldAxial, (e) => e.head.axial),
    loopPull: s.loopPull && of(s.loopPull, mostPulled),
  }
}

function explainedTieBack(line: LineStudy, t: TieBackFacts): TieBackFacts {
  const index = line.input.stanchions.findIndex((s) => s.stanchion.id === t.stanchion.id)
  const before = line.input.stanchions[index]?.tieBacks.findIndex((b) => b.tieBack.id === t.tieBack.id) ?? 0
  const leg = (i: 0 | 1): TieBackFacts['legs'][0] => {
    const explain = explainDemand(line, index, t.legs[i].force, (e) => e.head.legs[2 * before + i])
    return explain ? { ...t.legs[i], force: { ...t.legs[i].force, explain } } : t.legs[i]
  }
  return { ...t, legs: [leg(0), leg(1)] }
}

/** Take-up of a line and its four parts; null where the installed line is not known. */
export function explainTake(line: LineStudy): Explained | null {
  const { installed, input } = line
  const { chainLength, results } = installed
  if (chainLength === null || results.tension === null) return null
  const { axialStiffness, constructionalStretch, source } = input.rope
  const { x, endStiffness } = input.model
  return explainTakeUp(
    {
      tension: results.tension,
      freeLength: chainLength,
      axialStiffness: (axialStiffness.low + axialStiffness.high) / 2,
      constructionalStretch: constructionalStretch ?? CONSTRUCTIONAL_STRETCH,
      spans: results.sag.map((sag, i) => ({ length: x[i + 1]! - x[i]!, sag: sag ?? Number.NaN })),
      endStiffness,
    },
    { rope: source, stanchion: input.stanchions[0]!.part.source },
  )
}

function explainEye(line: LineStudy): Explained {
  const take = explainTake(line) ?? given('Take-up', null, 'm', 'the installed line is not known')
  return explainEyeOffset(line.input.absorber, line.input.hardware, take)
}

/** The governing clearance of a line: the worst energy fall at its own grip, and the fall in time where that is more. */
export function explainLineClearance(study: Study, line: LineStudy): Explained | null {
  const own = [...line.falls.energy, ...line.falls.dynamic].filter((f) => f.fall.grip === line.input.grip)
  const worst = (method: 'energy' | 'dynamic') =>
    own
      .map((f) => f.fall)
      .filter((f) => f.method === method && f.clearance !== null)
      .reduce<(typeof own)[number]['fall'] | null>(
        (a, b) => (a && a.clearance! >= b.clearance! ? a : b),
        null,
      )
  const energy = worst('energy')
  const timed = worst('dynamic')
  const at = energy && caseOf(line, energy)
  const figures = at && figuresOf(study.plan, at)
  if (!energy || !figures) return null
  const sum = explainClearance(figures, energy.clearance)
  if (!timed) return sum
  const inTime = found('Greatest clearance in time', timed.clearance, 'm', 'fall in time')
  return derived('greatest', 'Clearance below the walking surface', [sum, inTime], { unit: 'm' })
}

/** Depth of the fall room below the girder's top at a station, by the worker and corner that govern there. */
export function explainDepthAt(study: Study, line: LineStudy, station: number): Explained | null {
  const reaches = reachesAt(line.input, line.statics, station, line.marginBelow)
  if (typeof reaches === 'string') return null
  const worst = reaches.reduce((a, b) => (b.depth > a.depth ? b : a))
  const figures = reachFigures(study.plan, worst, line.input.line.workersAtOnce)
  const note = `${worst.worker.name}, ${worst.line} line, ${worst.end} connector, load at this station`
  return { ...explainDepth(figures, worst.depth), note }
}

/** What the reported corner of a stanchion does to it: the energy fall at the line's grip that pulls hardest there. */
export function explainReportedStanchion(line: LineStudy, id: string): StanchionExplained | null {
  const index = line.input.stanchions.findIndex((s) => s.stanchion.id === id)
  const s = line.input.stanchions[index]
  if (!s) return null
  const pulls = line.falls.energy
    .filter((f) => f.fall.grip === line.input.grip)
    .flatMap((f) => (f.heads ? [f.heads[index]!] : []))
  if (pulls.length === 0) return null
  const size = (p: (typeof pulls)[number]): number => Math.hypot(p.horizontal, p.down)
  const worst = pulls.reduce((a, b) => (size(b) > size(a) ? b : a))
  return explainStanchion(s, worst, 'the energy fall at the line’s grip that pulls hardest on this head')
}

function explainedObstacle(study: Study, o: ObstacleFacts): ObstacleFacts {
  const line = study.lines.find((l) => l.id === o.line)
  const { gap, station } = o
  if (!line || typeof gap !== 'number' || station === null) return o
  return {
    ...o,
    explain: () => {
      const depth = explainDepthAt(study, line, station)
      const parts = [
        ...(o.at ? [given(`${o.name}, elevation at its worst point`, o.at[2], 'm', 'the plan')] : []),
        given('Margin of the obstacle', o.margin, 'm', 'the plan'),
        ...(depth ? [depth] : []),
      ]
      return found(
        'Least vertical gap, margin taken off',
        gap,
        'm',
        'measured between the underside of the fall room (swing, body and margins included) and the obstacle',
        parts,
      )
    },
  }
}
