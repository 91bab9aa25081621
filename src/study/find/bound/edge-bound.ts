/**
 * Whether a span between two given gaps must clash with something below whatever else the layout does: the room of its
 * least depths is held against every obstacle. Made when a path asks for the span, and remembered.
 */
import { gapsOfLine, type Target } from '../../../geometry/gaps'
import { buildRoom, type RoomInput, type RoomStation, walkingSurface } from '../../../geometry/room'
import type { Basis, Plan } from '../../../plan/types'
import { say } from '../../../rules/words'
import type { LineInput } from '../../line-input'
import type { Reason } from '../types'
import type { LeastReach, SpanBounds } from './span-bound'

/** Shares of a span at which its least depth is computed once its middle clears. */
const SHARES = [0.04, 0.1, 0.2, 0.32, 0.42, 0.5, 0.58, 0.68, 0.8, 0.9, 0.96]

/** A room is made of slices: what overlaps by less than this, m, is left to the whole study. */
const CLOSE = 0.02

export interface EdgeModel {
  plan: Plan
  basis: Basis
  input: LineInput
  bounds: SpanBounds
  targets: Target[]
  /** Horizontal metres per metre of station. */
  planRate: number
  /** Stations of the line's ends, m. */
  ends: [number, number]
}

const sampleOf = (r: LeastReach) => ({ drop: r.drop, extension: r.extension, height: r.height })

function roomInput(m: EdgeModel, stations: { station: number; reaches: LeastReach[] }[]): RoomInput {
  const { input, basis } = m
  const ends: ('low' | 'high')[] = ['low', 'high']
  const corners = input.workers.flatMap(({ worker }) =>
    ends.map((connector) => ({ worker: worker.id, line: 'soft' as const, connector })),
  )
  const made = stations.map(
    ({ station, reaches }): RoomStation => ({
      station,
      samples: corners.map((c) => {
        const found = reaches.find((r) => r.worker.id === c.worker && r.end === c.connector)
        return found ? sampleOf(found) : { unknown: 'no bound' }
      }),
    }),
  )
  const offset = input.stanchions[0]!.stanchion.offset
  return {
    line: input.line.id,
    girder: input.girder.id,
    frame: input.geometry.frame,
    stanchions: m.ends.map((station) => ({ station, offset })),
    workers: input.workers.map(({ worker, connector }) => ({
      id: worker.id,
      type: connector.type,
      length: connector.length,
      harnessStretch: worker.harnessStretch,
      dRingHeight: worker.dRingHeight,
    })),
    corners,
    stations: made,
    excess: [],
    marginBelow: basis.marginBelow,
    side: basis.bodyRadius + basis.marginSide,
    surface: walkingSurface(m.plan, input.girder),
  }
}

/** The worst clash of a room with what lies below, or null. */
function clash(m: EdgeModel, input: RoomInput): Reason | null {
  const gaps = gapsOfLine(buildRoom(input), m.targets)
  let worst: { gap: number; name: string } | null = null
  m.targets.forEach((t, i) => {
    const point = gaps[i]?.point
    if (!point) return
    const gap = point.gap - t.margin
    if (gap < -CLOSE && (!worst || gap < worst.gap)) worst = { gap, name: nameOf(m.plan, t.id) }
  })
  if (!worst) return null
  const { gap, name } = worst as { gap: number; name: string }
  return {
    rule: 'obstacle-gap',
    text: `the room of a fall reaches at least ${say(-gap, 'm', m.plan.units)} into ${name}`,
  }
}

const nameOf = (plan: Plan, id: string): string =>
  (plan.obstacles.find((o) => o.id === id) ?? plan.girders.find((g) => g.id === id))?.name || id

/** Why no layout can have a span from one station to another; null where this bound does not tell. */
export function edgeStop(m: EdgeModel, from: number, to: number): Reason | null {
  if (m.targets.length === 0) return null
  const [middle] = profile(m, from, to, [0.5])
  if (!middle) return null
  const near = [-1e-4, 1e-4].map((off) => ({ ...middle, station: middle.station + off }))
  const where = `Between ${say(from, 'm', m.plan.units)} and ${say(to, 'm', m.plan.units)}`
  const found = clash(m, roomInput(m, near)) ?? clash(m, roomInput(m, profile(m, from, to, SHARES)))
  return found && { rule: found.rule, text: `${where}: ${found.text}.` }
}

function profile(
  m: EdgeModel,
  from: number,
  to: number,
  shares: number[],
): { station: number; reaches: LeastReach[] }[] {
  const X = (to - from) * m.planRate
  const rest = { left: (from - m.ends[0]) * m.planRate, right: (m.ends[1] - to) * m.planRate }
  const stations = shares.map((share) => ({
    station: from + (to - from) * share,
    reaches: m.bounds.reaches({ X, at: X * share, rest }),
  }))
  return stations.filter((s) => s.reaches.length > 0)
}
