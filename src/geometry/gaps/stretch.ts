/** The swings of a room in stretches of line: a few bounds that stand for many swings. */
import type { Vec2 } from '../../plan/types'
import type { Room, Slice } from '../room/types'
import { allSlices } from '../room/underside'

/** Length of a stretch along the line, in stations (m along the girder). */
const STRETCH = 0.2

export interface Stretch {
  /** Lowest point of its swings, elevation, m. */
  low: number
  /** Lowest first. */
  slices: Slice[]
  /** The same as they come along the line: of what is equally near, the first is told. */
  along: Slice[]
  /** The widest at each of their stations and directions: what bounds the footprint. */
  rim: Slice[]
  /** The widest of them. */
  widest: Slice
  /** No point of its swings lies farther than this from the widest, m. */
  slack: number
  /** Bounds of its swings, without the body about them. */
  box: PlanBox
}

/** Direction in plan of the girder that a room hangs from. */
export const roomAxis = ({ frame }: Room): Vec2 => [
  frame.along[0] / frame.planRate,
  frame.along[1] / frame.planRate,
]

/** Swings of a stretch run in directions that differ by no more than this, rad. */
const TURN = 0.1

const turnOf = (s: Slice): number => Math.atan2(s.dy, s.dx)

/** Swings that lie near each other in station and run nearly the same way, each such group as a stretch. */
export function stretchesOf(room: Room): Stretch[] {
  const by = new Map<number, Slice[]>()
  for (const s of allSlices(room)) {
    const key = Math.floor(s.station / STRETCH) * 1000 + Math.round(turnOf(s) / TURN)
    const list = by.get(key)
    if (list) list.push(s)
    else by.set(key, [s])
  }
  const axis = roomAxis(room)
  return [...by.values()].map((list) => stretchOf(list, axis))
}

function stretchOf(along: Slice[], [ax, ay]: Vec2): Stretch {
  const slices = [...along].sort((a, b) => a.z - a.radius - (b.z - b.radius))
  const low = slices[0]!.z - slices[0]!.radius
  const widest = slices.reduce((most, s) => (s.reach > most.reach ? s : most))
  const slack = slices.reduce((most, s) => Math.max(most, standsFrom(s, widest)), 0)
  const rim = rimOf(slices)
  const box = planBox(
    rim.flatMap((s): Vec2[] => [
      [s.x - s.dx * s.reach, s.y - s.dy * s.reach],
      [s.x + s.dx * s.reach, s.y + s.dy * s.reach],
    ]),
    ax,
    ay,
  )
  return { low, slices, along, rim, widest, slack, box }
}

/** No point of a swing lies farther than this from the line of another that is at least as wide, m. */
const standsFrom = (s: Slice, wide: Slice): number =>
  Math.hypot(s.x - wide.x, s.y - wide.y) + s.reach * Math.hypot(s.dx - wide.dx, s.dy - wide.dy)

/** Of slices at the same station and in the same direction the widest alone. */
function rimOf(list: Slice[]): Slice[] {
  const rim: Slice[] = []
  for (const s of [...list].sort((a, b) => b.reach - a.reach)) {
    if (!rim.some((wider) => alike(wider, s))) rim.push(s)
  }
  return rim
}

const alike = (a: Slice, b: Slice): boolean =>
  a.station === b.station && Math.abs(a.dx - b.dx) + Math.abs(a.dy - b.dy) < 1e-6

/** Bounds in plan, along and across the room's girder, m. */
export interface PlanBox {
  u0: number
  u1: number
  v0: number
  v1: number
}

/** Bounds of a polygon, along the direction (ax, ay) and across it. */
export function planBox(points: Vec2[], ax: number, ay: number): PlanBox {
  const box = { u0: Infinity, u1: -Infinity, v0: Infinity, v1: -Infinity }
  for (const [x, y] of points) widen(box, x * ax + y * ay, y * ax - x * ay)
  return box
}

function widen(box: PlanBox, u: number, v: number): void {
  if (u < box.u0) box.u0 = u
  if (u > box.u1) box.u1 = u
  if (v < box.v0) box.v0 = v
  if (v > box.v1) box.v1 = v
}

/** Distance between two bounds, m: no more than that between what lies in them. */
export function boxesApart(a: PlanBox, b: PlanBox): number {
  const du = Math.max(0, a.u0 - b.u1, b.u0 - a.u1)
  const dv = Math.max(0, a.v0 - b.v1, b.v0 - a.v1)
  return Math.sqrt(du * du + dv * dv)
}
