/** The fall room of a line as slices: see types.ts for what is swept. */
import type { Vec2 } from '../../plan/types'
import { topPoint } from '../girder'
import { excessAt, offsetAt, stretchesOf, whyUnknown } from './profile'
import { standingReach } from './surface'
import { connectorReach, feetReach, swingOf } from './swing'
import type { Fan, Plane, Room, RoomInput, RoomSample, Slice } from './types'

/** Slices stand no farther apart than this, m. */
const SLICE_STEP = 0.1
/** Their lowest points differ by no more than this from one to the next, m, where that takes no more than 1 cm steps. */
const SLICE_RISE = 0.006
const LEAST_STEP = 0.01
/** A body is never taken as thinner than this, m, whatever the margins say. */
const LEAST_SIDE = 0.1

/** Builds the room of a line. It never throws; what is not known is told in `unknown`. */
export function buildRoom(input: RoomInput): Room {
  const slices: Slice[] = []
  const ends: Fan[] = []
  const places = rememberedPlaces(input)
  for (let corner = 0; corner < input.corners.length; corner++) {
    for (const stretch of stretchesOf(input, corner)) {
      const make = (station: number): Slice => slice(input, corner, places(station), stretch.at(station))
      slices.push(...lowered(placed(make, stretch.from, stretch.to)))
      for (const station of [stretch.from, stretch.to]) {
        ends.push(...endFan(input, corner, station, stretch.at(station)))
      }
    }
  }
  slices.sort((a, b) => a.station - b.station)
  // Slices stand apart: the disc is widened so that discs at their places cover what a disc moved between them would.
  const side = Math.hypot(Math.max(LEAST_SIDE, input.side), SLICE_STEP / 2)
  const { line, girder, frame, corners, surface } = input
  const unknown = whyUnknown(input)
  return { line, girder, frame, corners, slices, ends, side, lid: lidOf(input), surface, unknown }
}

/** Slices from one station to another, closer where the line's drop is steep. */
function placed(make: (station: number) => Slice, from: number, to: number): Slice[] {
  const parts = Math.max(1, Math.ceil((to - from) / SLICE_STEP))
  const first = make(from)
  const out = [first]
  let last = first
  for (let i = 1; i <= parts; i++) {
    const next = make(from + ((to - from) * i) / parts)
    between(make, last, next, out)
    out.push(next)
    last = next
  }
  return out
}

const bottom = (s: Slice): number => s.z - s.radius

function between(make: (station: number) => Slice, a: Slice, b: Slice, into: Slice[]): void {
  if (Math.abs(bottom(a) - bottom(b)) <= SLICE_RISE || b.station - a.station <= LEAST_STEP) return
  const mid = make((a.station + b.station) / 2)
  between(make, a, mid, into)
  into.push(mid)
  between(make, mid, b, into)
}

/**
 * Every slice taken down half-way to a lower neighbour, so that what moves between two is nowhere below both, and made as
 * wide as half-way to a wider one. The slices themselves are changed: they are some thousands, made for this alone.
 */
function lowered(slices: Slice[]): Slice[] {
  const bottoms = slices.map(bottom)
  const reaches = slices.map((s) => s.reach)
  slices.forEach((s, i) => {
    const lowest = Math.min(bottoms[i - 1] ?? Infinity, bottoms[i + 1] ?? Infinity)
    const widest = Math.max(reaches[i - 1] ?? 0, reaches[i + 1] ?? 0)
    s.z -= Math.max(0, (bottoms[i]! - lowest) / 2)
    s.reach = Math.max(s.reach, (s.reach + widest) / 2)
  })
  return slices
}

/** Where one stands at a station, looking in one direction: shared by all corners there. */
interface Place {
  station: number
  /** On the girder's top, lowered by marginBelow and the excess. */
  x: number
  y: number
  z: number
  direction: Vec2
  /** How far one can stand in that direction, m. */
  edge: number
}

function placeAt(input: RoomInput, station: number, direction: Vec2, edge: number): Place {
  const [x, y, z] = topPoint(input.frame, station, offsetAt(input, station))
  return { station, x, y, z: z - input.marginBelow - excessAt(input, station), direction, edge }
}

/** Places across the line, with how far one can stand to either side there and half a step around. */
function rememberedPlaces(input: RoomInput): (station: number) => Place {
  const known = new Map<number, Place>()
  const left: Vec2 = [input.frame.left[0], input.frame.left[1]]
  const right: Vec2 = [-left[0], -left[1]]
  const edgeAt = (station: number): number => {
    const from = planPoint(input, station)
    return Math.max(standingReach(input.surface, from, left), standingReach(input.surface, from, right))
  }
  return (station) => {
    const kept = known.get(station)
    if (kept) return kept
    const half = SLICE_STEP / 2
    const edge = Math.max(edgeAt(station - half), edgeAt(station), edgeAt(station + half))
    const found = placeAt(input, station, left, edge)
    known.set(station, found)
    return found
  }
}

/** Plane of the girder's top, carried on past its ends. */
function lidOf({ frame }: RoomInput): Plane {
  const gx = (frame.along[0] / frame.planRate ** 2) * frame.rise
  const gy = (frame.along[1] / frame.planRate ** 2) * frame.rise
  return { z0: frame.origin[2] - gx * frame.origin[0] - gy * frame.origin[1], gx, gy }
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
    const edge = standingReach(input.surface, from, direction)
    out.push(slice(input, corner, placeAt(input, station, direction, edge), sample))
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

function slice(input: RoomInput, corner: number, place: Place, sample: RoomSample): Slice {
  const worker = workerOf(input, corner)
  const swing = swingOf(worker, sample)
  return {
    x: place.x,
    y: place.y,
    z: place.z + sample.height - sample.drop,
    dx: place.direction[0],
    dy: place.direction[1],
    radius: swing.feet,
    reach: feetReach(swing, Math.min(place.edge, connectorReach(worker, sample.height))),
    station: place.station,
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
