/** The fall room of a studied line: falls at enough stations that nothing between them is missed. */
import { buildRoom, type Room, type RoomInput, type RoomStation, walkingSurface } from '../geometry/room'
import type { Plan } from '../plan/types'
import { CORNERS } from './energy-falls'
import { excessAt } from './excess'
import { type FloorStation, floorOf } from './floor'
import type { LineStudy } from './line-study'

/** Shares of a span at which falls are computed for the room beside those of the floor: the drop is steep at its ends. */
const SHARES = [0.015, 0.04, 0.08, 0.15, 0.25, 0.4, 0.5, 0.6, 0.75, 0.85, 0.92, 0.96, 0.985]

/** Stations of the room: stanchions and shares of every span, m along the girder. */
function roomStations(line: LineStudy): number[] {
  const posts = line.input.geometry.stations
  const shares = posts.slice(1).flatMap((to, i) => {
    const from = posts[i]!
    return SHARES.map((share) => from + (to - from) * share)
  })
  const told = line.floor.map((f) => f.point.station)
  return [...posts, ...shares].filter((s) => told.every((t) => Math.abs(t - s) > 1e-6))
}

const solvedStations = new WeakMap<LineStudy, FloorStation[]>()

/** Every station at which falls of the line are known, in order; computed once for a studied line. */
function stationsOf(line: LineStudy): FloorStation[] {
  const kept = solvedStations.get(line)
  if (kept) return kept
  const more = floorOf(line.input, line.statics, line.marginBelow, roomStations(line), line.excess)
  const all = [...line.floor, ...more].sort((a, b) => a.point.station - b.point.station)
  solvedStations.set(line, all)
  return all
}

/** What the room is swept from; see geometry/room/types.ts. */
function roomInput(plan: Plan, line: LineStudy): RoomInput {
  const { input } = line
  const posts = input.geometry.stations
  const corners = input.workers.flatMap(({ worker }) =>
    CORNERS.filter((c) => c.grip === input.grip).map((c) => ({
      worker: worker.id,
      line: c.line,
      connector: c.connector,
    })),
  )
  const stations = stationsOf(line).map(
    ({ point, reaches, why }): RoomStation => ({
      station: point.station,
      samples: corners.map((c) => {
        const found = reaches.find(
          (r) => r.worker.id === c.worker && r.line === c.line && r.end === c.connector,
        )
        return found ?? { unknown: why ?? 'this corner was not computed' }
      }),
    }),
  )
  return {
    line: line.id,
    girder: input.girder.id,
    frame: input.geometry.frame,
    stanchions: posts.map((station, i) => ({ station, offset: input.geometry.offsets[i]! })),
    workers: input.workers.map(({ worker, connector }) => ({
      id: worker.id,
      type: connector.type,
      length: connector.length,
      harnessStretch: worker.harnessStretch,
      dRingHeight: worker.dRingHeight,
    })),
    corners,
    stations,
    excess: posts.slice(1).map((to, i) => ({
      from: posts[i]!,
      to,
      excess: excessAt(input, line.excess, (posts[i]! + to) / 2),
    })),
    marginBelow: line.marginBelow,
    side: plan.basis.bodyRadius + plan.basis.marginSide,
    surface: walkingSurface(plan, input.girder),
  }
}

const built = new WeakMap<LineStudy, { key: string; room: Room }>()

/** The fall room of one line of the plan; the same one again while neither the line nor what one walks on changes. */
export function roomOf(plan: Plan, line: LineStudy): Room {
  const surface = walkingSurface(plan, line.input.girder)
  const side = plan.basis.bodyRadius + plan.basis.marginSide
  const key = JSON.stringify([surface, side])
  const kept = built.get(line)
  if (kept?.key === key) return kept.room
  const room = buildRoom(roomInput(plan, line))
  built.set(line, { key, room })
  return room
}
