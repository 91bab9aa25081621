/** Falls by energy at every corner, at mid-span of every span and beside every stanchion. */
import { type LinePlace, midStation, placeOf } from '../geometry/line'
import type { ConnectorPart, Worker } from '../plan/types'
import {
  type EnergyFall,
  type Faller,
  fallAtStanchion,
  fallOnLine,
  fallReach,
  forceBound,
  freeFall,
  giveOf,
  RIGID,
} from '../solver/fall-energy'
import { type HeadPull, headPulls, loadedPulls } from '../solver/heads'
import type { LineLaw } from '../solver/line-law'
import type { Corner, Solved } from '../solver/model'
import type { LineInput } from './line-input'
import type { LineStatics } from './line-statics'

export const CORNERS: readonly Corner[] = (['sliding', 'held'] as const).flatMap((grip) =>
  (['soft', 'stiff'] as const).flatMap((line) =>
    (['low', 'high'] as const).map((connector) => ({ grip, line, connector })),
  ),
)

export interface FallCase {
  corner: Corner
  span: number
  station: number
  worker: Worker
  connector: ConnectorPart
  count: number
  /** Rope above the walking surface, m, and free fall, m; null where the unloaded line is not known. */
  height: number | null
  freeFall: number | null
  fall: Solved<EnergyFall>
  /** Pull on every head at the lowest point; null where the fall is not known. */
  heads: HeadPull[] | null
}

/** One worker's fall at one end of the connector's plateau. */
export function fallerOf(
  worker: Worker,
  connector: ConnectorPart,
  end: Corner['connector'],
  height: number,
  count: number,
): Faller {
  return {
    mass: worker.mass,
    count,
    freeFall: freeFall(connector.type, connector.length, worker.dRingHeight, height),
    connector: {
      stiffness: connector.stiffness,
      plateau: connector.plateau[end],
      maxExtension: connector.maxExtension,
    },
  }
}

/** The load up to which a line's laws are solved at first: every connector of the crew at its high plateau. */
export function usualLimit(input: LineInput): number {
  const most = input.workers.map((w) => w.connector.plateau.high)
  return input.line.workersAtOnce * Math.max(...most, 1)
}

/** Tries the crew's usual loads first, then loads that only a connector torn to its end brings. */
function withLaw<T>(
  input: LineInput,
  statics: LineStatics,
  corner: Corner,
  place: LinePlace,
  use: (law: LineLaw) => { faller: Faller; got: Solved<T> },
): Solved<T> {
  let limit = usualLimit(input)
  for (;;) {
    const law = statics.law(corner.line, corner.grip, place.span, place.at, limit)
    if (!law.ok) return law
    const { faller, got } = use(law.value)
    const bound = faller.count * forceBound(faller)
    if (got.ok || limit >= bound) return got
    limit = Math.min(limit * 3, bound)
  }
}

/** Rope height above the girder's top where the law's unloaded line passes, m. */
const heightAbove = (input: LineInput, place: LinePlace, lawHeight: number): number =>
  input.geometry.heads[place.span]![2] + lawHeight - place.top[2]

/** The fall of one worker of the crew at a station within a span. */
export function fallAt(
  input: LineInput,
  statics: LineStatics,
  corner: Corner,
  station: number,
  who: LineInput['workers'][number],
): FallCase {
  const place = placeOf(input.geometry, station)
  const count = input.line.workersAtOnce
  let height: number | null = null
  let free: number | null = null
  const fall = withLaw(input, statics, corner, place, (law) => {
    height = heightAbove(input, place, law.height)
    const faller = fallerOf(who.worker, who.connector, corner.connector, height, count)
    free = faller.freeFall
    return { faller, got: fallOnLine(faller, law) }
  })
  const line = statics.unloaded(corner.line, corner.grip)
  const heads =
    fall.ok && fall.value.state && line.ok
      ? headPulls(loadedPulls(line.value, place.span, fall.value.state), input.directions)
      : null
  return { corner, span: place.span, station, ...who, count, height, freeFall: free, fall, heads }
}

/** Mid-span falls of the whole crew at every corner. */
export function midSpanFalls(input: LineInput, statics: LineStatics): FallCase[] {
  const spans = input.stanchions.length - 1
  return Array.from({ length: spans }, (_, span) =>
    input.workers.flatMap((who) =>
      CORNERS.map((corner) => fallAt(input, statics, corner, midStation(input.geometry, span), who)),
    ),
  ).flat()
}

/** Falls beside a stanchion, where the line does not move; both ends of the connector. */
export interface BesideCase {
  stanchion: string
  worker: Worker
  connector: ConnectorPart
  end: Corner['connector']
  freeFall: number
  fall: Solved<EnergyFall>
}

export function besideFalls(input: LineInput): BesideCase[] {
  return input.stanchions.flatMap((s) =>
    input.workers.flatMap(({ worker, connector }) =>
      (['low', 'high'] as const).map((end) => {
        const faller = fallerOf(worker, connector, end, s.part.height, 1)
        const fall = fallAtStanchion(faller)
        return { stanchion: s.stanchion.id, worker, connector, end, freeFall: faller.freeFall, fall }
      }),
    ),
  )
}

/** How far a fall at a station reaches, for the room: line drop, connector extension, rope height; no last solve. */
export interface Reach {
  drop: number
  extension: number
  height: number
  freeFall: number
}

export function reachAt(
  input: LineInput,
  statics: LineStatics,
  corner: Corner,
  place: LinePlace,
  who: LineInput['workers'][number],
): Solved<Reach> {
  const count = input.line.workersAtOnce
  const whole = input.geometry.x[place.span + 1]! - input.geometry.x[place.span]!
  const edge = 1e-6 * whole
  if (place.at < edge || place.at > whole - edge) {
    const head = input.stanchions[place.at < edge ? place.span : place.span + 1]!
    return reachOf(
      fallerOf(who.worker, who.connector, corner.connector, head.part.height, count),
      RIGID,
      head.part.height,
    )
  }
  return withLaw(input, statics, corner, place, (law) => {
    const height = heightAbove(input, place, law.height)
    const faller = fallerOf(who.worker, who.connector, corner.connector, height, count)
    return { faller, got: reachOf(faller, giveOf(law), height) }
  })
}

function reachOf(faller: Faller, give: Parameters<typeof fallReach>[1], height: number): Solved<Reach> {
  const got = fallReach(faller, give)
  if (!got.ok) return got
  const { drop, extension } = got.value
  return { ok: true, value: { drop, extension, height, freeFall: faller.freeFall } }
}
