/** Drops workers on a line: the fall in time with its history, the energy method beside it, and what it comes to. */
import { type ReadModel, type Top, topsUnder } from '../../geometry/gaps'
import { placeOf } from '../../geometry/line'
import type { Plan } from '../../plan/types'
import { type Corner, type Solved, solved, unsolved } from '../../solver/model'
import { fallInTime } from '../../solver/time/fall'
import type { FallHistory, TimeFall, TimeFallOptions, TimeWorker } from '../../solver/time/types'
import { fallAt } from '../energy-falls'
import { type LineInput, lineInput } from '../line-input'
import { type LineStatics, lineStatics } from '../line-statics'
import type { Fall } from '../results'
import { studiedEnergyFall } from '../studied-fall'
import { timeInput, timeWorker } from '../time-falls'
import { beneath } from './beneath'
import { endOf } from './ends'
import { momentsOf } from './moments'
import { played } from './played'
import { restOf } from './rest'
import { stackOf } from './stack'
import { swingOf } from './swing'
import type { Drop, DroppedWorker, DropRequest, DropStudy } from './types'

type Member = LineInput['workers'][number]

/** The results entry of one dropped body. */
function dynamicFall(input: LineInput, request: DropRequest, index: number, fall: TimeFall): Fall {
  const { worker, station } = request.drops[index]!
  const body = fall.workers[index]!
  return {
    method: 'dynamic',
    ...request.corner,
    span: placeOf(input.geometry, station).span,
    station,
    worker,
    workers: request.drops.length,
    freeFall: body.freeFall,
    arrestForce: body.arrestForce,
    connectorExtension: body.connectorExtension,
    lineDrop: body.lineDrop,
    tension: fall.tension,
    absorberExtension: fall.absorberExtension,
    totalFall: body.totalFall,
    clearance: body.clearance,
    connectorTorn: body.connectorTorn,
  }
}

/** The energy method for as many alike as fall together at this station. */
function energyFall(
  plan: Plan,
  input: LineInput,
  statics: LineStatics,
  request: DropRequest,
  who: Member,
  drop: Drop,
): Fall | null {
  const together = request.drops.filter(
    (d) => Math.abs(d.station - drop.station) < 1e-6 && d.delay === drop.delay,
  ).length
  const count = request.order === 'together' ? together : 1
  const alike = { ...input, line: { ...input.line, workersAtOnce: count } }
  return studiedEnergyFall(fallAt(alike, statics, request.corner, drop.station, who), plan.basis.marginBelow)
    .fall
}

/** When and how fast the feet first meet something under them; D-ring to feet as stretched. */
function strikeOf(
  tops: Top[],
  h: FallHistory,
  index: number,
  one: TimeWorker,
  place: ReturnType<typeof placeOf>,
): DroppedWorker['strikes'] {
  const [x, y, top] = place.top
  const first = beneath(tops, x, y, top)[0]
  if (!first) return null
  const body = one.dRingHeight + one.harnessStretch
  for (let f = 1; f < h.frames; f++) {
    const z = h.workerZ[f * h.workers + index]! - body
    if (z > first.top) continue
    const before = h.workerZ[(f - 1) * h.workers + index]! - body
    return {
      what: first,
      at: h.times[f]!,
      speed: Math.max(0, (before - z) / (h.times[f]! - h.times[f - 1]!)),
    }
  }
  return null
}

function membersOf(input: LineInput, request: DropRequest): Member[] | string {
  const found = request.drops.map((d) => input.workers.find((w) => w.worker.id === d.worker))
  return found.every((m) => m !== undefined)
    ? (found as Member[])
    : 'a worker of this fall is not on the line'
}

/**
 * Drops the workers of a request. Fails with a reason where the line, a worker or the integration does. `models` are the
 * model files that the plan places, as read: what is not among them can't be struck, and the rest names it.
 */
export function dropWorkers(
  plan: Plan,
  request: DropRequest,
  options: TimeFallOptions & { models?: Map<string, ReadModel> } = {},
): Solved<DropStudy> {
  const line = plan.lines.find((l) => l.id === request.line)
  if (!line) return unsolved(`line ${request.line} is not in the plan`)
  if (request.drops.length === 0) return unsolved('nobody falls')
  const input = lineInput(plan, line)
  const members = membersOf(input, request)
  if (typeof members === 'string') return unsolved(members)
  const statics = lineStatics(input.model)
  const unloaded = statics.unloaded(request.corner.line, request.corner.grip)
  if (!unloaded.ok) return unloaded
  const bodies = request.drops.map((d, i) => ({
    ...timeWorker(input, members[i]!, request.corner.connector, d.station, plan.basis.marginBelow),
    delay: d.delay,
  }))
  const fall = fallInTime(
    { ...timeInput(input, unloaded.value, bodies), order: request.order },
    { history: true, ...options },
  )
  if (!fall.ok) return fall
  const below = topsUnder(plan, input.girder, options.models ?? new Map())
  const workers = request.drops.map((drop, i) =>
    droppedWorker(plan, below, input, statics, request, fall.value, i, members[i]!, bodies[i]!, drop),
  )
  const ropeStrength = input.rope.breakingStrength * input.rope.termination
  const ends = endOf(fall.value, input, ropeStrength, workers, bodies)
  const { heads } = input.geometry
  return solved(
    played(
      { request, heads, fall: fall.value, workers, ends, ropeStrength },
      members.map((m) => m.worker.mass),
    ),
  )
}

function droppedWorker(
  plan: Plan,
  below: ReturnType<typeof topsUnder>,
  input: LineInput,
  statics: LineStatics,
  request: DropRequest,
  fall: TimeFall,
  index: number,
  who: Member,
  one: TimeWorker,
  drop: Drop,
): DroppedWorker {
  const place = placeOf(input.geometry, drop.station)
  const body = fall.workers[index]!
  const height = ropeHeight(statics, input, request.corner, drop)
  const attachment = place.top[2] + height - body.lineDrop
  const dynamic = dynamicFall(input, request, index, fall)
  const energy = energyFall(plan, input, statics, request, who, drop)
  const [x, y, surface] = place.top
  const under = beneath(below.tops, x, y, surface)[0]
  const strikes = fall.history ? strikeOf(below.tops, fall.history, index, one, place) : null
  const lasting = { torn: body.connectorTorn, absorber: fall.absorberExtension }
  return {
    drop,
    name: who.worker.name,
    surface,
    energy,
    dynamic,
    stack: stackOf(plan, { drop, energy, dynamic }, surface, under),
    moments: momentsOf(fall, index, strikes),
    swing: swingOf(plan, below.tops, input, drop.station, who, attachment, height, body.connectorExtension),
    rest: restOf(below, input, statics, request.corner, drop.station, who, lasting),
    strikes,
  }
}

/** Height of the unloaded rope above the walking surface at a station, m. */
function ropeHeight(statics: LineStatics, input: LineInput, corner: Corner, drop: Drop): number {
  const place = placeOf(input.geometry, drop.station)
  const law = statics.law(corner.line, corner.grip, place.span, place.at, 1000)
  const a = input.geometry.heads[place.span]![2]
  const b = input.geometry.heads[place.span + 1]![2]
  const chord = a + (b - a) * place.share
  return (law.ok ? a + law.value.height : chord) - place.top[2]
}
