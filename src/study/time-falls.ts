/** The falls in time that every plan gets (plan-format.md): mid-span of every span, four corners, every worker. */
import { midStation, placeOf } from '../geometry/line'
import type { Basis } from '../plan/types'
import type { HeadPull } from '../solver/heads'
import type { UnloadedLine } from '../solver/installed'
import type { Corner, Solved } from '../solver/model'
import { fallInTime } from '../solver/time/fall'
import type { TimeFall, TimeFallInput, TimeFallOptions, TimeWorker } from '../solver/time/types'
import type { LineInput } from './line-input'
import type { LineStatics } from './line-statics'
import type { TimeFalls } from './line-study'
import type { Fall } from './results'
import { type StudiedFall, unknownFall } from './studied-fall'

export const TIME_CORNERS: readonly Corner[] = [
  { grip: 'sliding', line: 'soft', connector: 'low' },
  { grip: 'sliding', line: 'soft', connector: 'high' },
  { grip: 'sliding', line: 'stiff', connector: 'high' },
  { grip: 'held', line: 'stiff', connector: 'high' },
]

export interface TimeOptions {
  cancelled?: () => boolean
}

type Member = LineInput['workers'][number]

/** One worker as the fall in time needs them, tied to the line at a station. */
export function timeWorker(
  input: LineInput,
  who: Member,
  end: Corner['connector'],
  station: number,
  marginBelow: number,
): TimeWorker {
  const place = placeOf(input.geometry, station)
  const { worker, connector } = who
  return {
    mass: worker.mass,
    connector: {
      stiffness: connector.stiffness,
      plateau: connector.plateau[end],
      maxExtension: connector.maxExtension,
    },
    type: connector.type,
    length: connector.length,
    span: place.span,
    x: input.geometry.x[place.span]! + place.at,
    surface: place.top[2],
    dRingHeight: worker.dRingHeight,
    harnessStretch: worker.harnessStretch,
    marginBelow,
  }
}

/** What the fall in time starts from: the same set's own unloaded line. */
export function timeInput(input: LineInput, line: UnloadedLine, workers: TimeWorker[]): TimeFallInput {
  const { spans, headShift, absorberExtension, set, grip } = line
  return { model: input.model, set, grip, line: { spans, headShift, absorberExtension }, workers }
}

/**
 * Peaks on every head, signed as the energy method signs them: an end head is pulled towards the line, one in between
 * towards the loaded span. The sideways pull at a bend is the greatest tension turned by the bend.
 */
function timeHeads(input: LineInput, span: number, fall: TimeFall): HeadPull[] {
  const last = fall.heads.length - 1
  return fall.heads.map((head, j) => {
    const towards = j === 0 || (j < last && j <= span) ? 1 : -1
    const before = input.directions[j - 1]
    const after = input.directions[j]
    const across = before && after ? fall.tension * (after[1] - before[1]) : 0
    const horizontal = Math.hypot(head.along, across)
    return { along: towards * head.along, across, down: head.down, horizontal }
  })
}

/** The results entry of a fall in time of several alike workers at one station. */
function studied(
  head: Parameters<typeof unknownFall>[0],
  input: LineInput,
  got: Solved<TimeFall>,
): StudiedFall {
  if (!got.ok) return { fall: unknownFall(head, got.why), heads: null, why: got.why }
  const body = got.value.workers[0]!
  const notes = [
    ...(body.connectorRanOut ? ['the connector has torn to its end'] : []),
    ...(got.value.absorberRanOut ? ['the line absorber has run out'] : []),
  ]
  const fall: Fall = {
    ...head,
    freeFall: body.freeFall,
    arrestForce: body.arrestForce,
    connectorExtension: body.connectorExtension,
    lineDrop: body.lineDrop,
    tension: got.value.tension,
    absorberExtension: got.value.absorberExtension,
    totalFall: body.totalFall,
    clearance: body.clearance,
    connectorTorn: body.connectorTorn,
    ...(notes.length > 0 ? { note: notes.join('; ') } : {}),
  }
  return { fall, heads: timeHeads(input, head.span, got.value), why: null }
}

/** One fall in time of the line's number of workers, alike, at mid-span. */
export function timeFallAt(
  input: LineInput,
  statics: LineStatics,
  basis: Basis,
  corner: Corner,
  span: number,
  who: Member,
  options: TimeFallOptions = {},
): StudiedFall {
  const station = midStation(input.geometry, span)
  const count = input.line.workersAtOnce
  const head = { method: 'dynamic' as const, ...corner, span, station, worker: who.worker.id, workers: count }
  const line = statics.unloaded(corner.line, corner.grip)
  if (!line.ok) return { fall: unknownFall(head, line.why), heads: null, why: line.why }
  const one = timeWorker(input, who, corner.connector, station, basis.marginBelow)
  const crew = Array.from({ length: count }, () => one)
  return studied(head, input, fallInTime(timeInput(input, line.value, crew), options))
}

/** Studies the falls in time of a line. */
export const timeFallsOf =
  (options: TimeOptions): TimeFalls =>
  (input, statics, basis) =>
    input.stanchions
      .slice(1)
      .flatMap((_, span) =>
        input.workers.flatMap((who) =>
          TIME_CORNERS.map((corner) => timeFallAt(input, statics, basis, corner, span, who, options)),
        ),
      )
