/** The fall room of a line as slices: see types.ts for what is swept. */
import type { Vec2 } from '../../plan/types'
import { topPoint } from '../girder'
import { excessAt, offsetAt, stretchesOf, whyUnknown } from './profile'
import { standingReach } from './surface'
import { connectorReach, feetReach, swingOf } from './swing'
import type { Fan, Plane, Room, RoomInput, RoomSample, Slice } from './types'

/** Slices stand no farther apart than this, m. */
export const SLICE_STEP = 0.1
/** A body is never taken as thinner than this, m, whatever the margins say. */
export const LEAST_SIDE = 0.1

/** Builds the room of a line. It never throws; what is not known is told in `unknown`. */
export function buildRoom(input: RoomInput): Room {
  const slices: Slice[] = []
  const ends: Fan[] = []
  for (let corner = 0; corner < input.corners.length; corner++) {
    for (const stretch of stretchesOf(input, corner)) {
      const parts = Math.max(1, Math.ceil((stretch.to - stretch.from) / SLICE_STEP))
      for (let i = 0; i <= parts; i++) {
        const station = stretch.from + ((stretch.to - stretch.from) * i) / parts
        slices.push(acrossSlice(input, corner, station, stretch.at(station)))
        ends.push(...endFan(input, corner, station, stretch.at(station)))
      }
    }
  }
  slices.sort((a, b) => a.station - b.station)
  // Slices stand apart: the disc is widened so that discs at their places cover what a disc moved between them would.
  const side = Math.hypot(Math.max(LEAST_SIDE, input.side), SLICE_STEP / 2)
  const { line, girder, frame, corners, surface } = input
  return {
    line,
    girder,
    frame,
    corners,
    slices,
    ends,
    side,
    lid: lidOf(input),
    surface,
    unknown: whyUnknown(input),
  }
}

/** Plane of the girder's top, carried on past its ends. */
function lidOf({ frame }: RoomInput): Plane {
  const gx = (frame.along[0] / frame.planRate ** 2) * frame.rise
  const gy = (frame.along[1] / frame.planRate ** 2) * frame.rise
  return { z0: frame.origin[2] - gx * frame.origin[0] - gy * frame.origin[1], gx, gy }
}

function acrossSlice(input: RoomInput, corner: number, station: number, sample: RoomSample): Slice {
  const left: Vec2 = [input.frame.left[0], input.frame.left[1]]
  const from = planPoint(input, station)
  const edge = Math.max(
    standingReach(input.surface, from, left),
    standingReach(input.surface, from, [-left[0], -left[1]]),
  )
  return slice(input, corner, station, sample, left, edge)
}

/** The swings past an end stanchion, one in each direction; none at other stations. */
function endFan(input: RoomInput, corner: number, station: number, sample: RoomSample): Fan[] {
  const first = input.stanchions[0]!.station
  const last = input.stanchions[input.stanchions.length - 1]!.station
  return [
    ...(Math.abs(station - first) < 1e-9 ? [fan(input, corner, station, sample, -1)] : []),
    ...(Math.abs(station - last) < 1e-9 ? [fan(input, corner, station, sample, 1)] : []),
  ]
}

function fan(input: RoomInput, corner: number, station: number, sample: RoomSample, way: 1 | -1): Fan {
  const worker = workerOf(input, corner)
  const swing = swingOf(worker, sample)
  const from = planPoint(input, station)
  const widest = feetReach(swing, Math.min(connectorReach(worker, sample.height), swing.dRing))
  const parts = Math.max(8, Math.ceil((Math.PI * widest) / SLICE_STEP))
  const out: Slice[] = []
  for (let i = 1; i < parts; i++) {
    const angle = (Math.PI * i) / parts - Math.PI / 2
    const direction = turned(input, angle, way)
    out.push(slice(input, corner, station, sample, direction, standingReach(input.surface, from, direction)))
  }
  const slices = out.filter((s) => s.reach > 0)
  const reach = slices.reduce((most, s) => Math.max(most, s.reach), 0)
  return { x: from[0], y: from[1], reach, slices }
}

/** The direction at `angle` from the line's end outwards, in plan. */
function turned({ frame }: RoomInput, angle: number, way: 1 | -1): Vec2 {
  const ax = (frame.along[0] / frame.planRate) * way
  const ay = (frame.along[1] / frame.planRate) * way
  const c = Math.cos(angle)
  const s = Math.sin(angle)
  return [ax * c - ay * s, ax * s + ay * c]
}

function slice(
  input: RoomInput,
  corner: number,
  station: number,
  sample: RoomSample,
  direction: Vec2,
  edge: number,
): Slice {
  const worker = workerOf(input, corner)
  const swing = swingOf(worker, sample)
  const top = topPoint(input.frame, station, offsetAt(input, station))
  return {
    x: top[0],
    y: top[1],
    z: top[2] + sample.height - sample.drop - input.marginBelow - excessAt(input, station),
    dx: direction[0],
    dy: direction[1],
    radius: swing.feet,
    reach: feetReach(swing, Math.min(edge, connectorReach(worker, sample.height))),
    station,
    corner,
  }
}

const planPoint = (input: RoomInput, station: number): Vec2 => {
  const p = topPoint(input.frame, station, offsetAt(input, station))
  return [p[0], p[1]]
}

function workerOf(input: RoomInput, corner: number): RoomInput['workers'][number] {
  const id = input.corners[corner]!.worker
  return input.workers.find((w) => w.id === id)!
}
