/**
 * How wide each corner's swings reach across the line: at a place u along the girder (horizontal, m from its start) the
 * interval of v (m to the left) that the discs of its feet cover.
 */
import type { Room, Slice } from '../types'

/** A slice in the girder's own plan axes: u along, v to the left. */
interface FlatSlice {
  u: number
  v: number
  /** Direction of the swing, du >= 0. */
  du: number
  dv: number
  reach: number
}

/** Swings that share a corner: one footprint, an interval at every u. */
export interface Sheet {
  slices: FlatSlice[]
  low: number
  high: number
}

export interface PlanAxes {
  ox: number
  oy: number
  ax: number
  ay: number
}

export function axesOf(room: Room): PlanAxes {
  const { frame } = room
  return {
    ox: frame.origin[0],
    oy: frame.origin[1],
    ax: frame.along[0] / frame.planRate,
    ay: frame.along[1] / frame.planRate,
  }
}

function flatten(s: Slice, { ox, oy, ax, ay }: PlanAxes): FlatSlice {
  const [x, y] = [s.x - ox, s.y - oy]
  const du = s.dx * ax + s.dy * ay
  const dv = s.dy * ax - s.dx * ay
  const sign = du < 0 ? -1 : 1
  return { u: x * ax + y * ay, v: y * ax - x * ay, du: du * sign, dv: dv * sign, reach: s.reach }
}

/** One sheet for each corner that swings at all. */
export function sheetsOf(room: Room): Sheet[] {
  const axes = axesOf(room)
  const all = [...room.slices, ...room.ends.flatMap((f) => f.slices)]
  return room.corners.flatMap((_, corner) => {
    const slices = all.filter((s) => s.corner === corner).map((s) => flatten(s, axes))
    if (slices.length === 0) return []
    slices.sort((a, b) => a.u - b.u)
    const low = Math.min(...slices.map((s) => s.u - s.reach * s.du)) - room.side
    const high = Math.max(...slices.map((s) => s.u + s.reach * s.du)) + room.side
    return [{ slices, low, high }]
  })
}

/** The interval of v that a sheet covers at u, or null where it covers none. */
export function sheetInterval(sheet: Sheet, side: number, u: number): [number, number] | null {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const s of sheet.slices) {
    const span = s.reach * s.du + side
    if (u < s.u - span || u > s.u + span) continue
    const top = capsuleTop(s, side, u, 1)
    const bottom = capsuleTop(s, side, u, -1)
    if (top !== null && top > high) high = top
    if (bottom !== null && bottom < low) low = bottom
  }
  return low <= high ? [low, high] : null
}

/**
 * Greatest (way 1) or least (way -1) v of a swing widened by a disc, at u. Along the swing v + sqrt(side^2 - w^2) is
 * concave, w the distance in u from the feet: its peak is where the widened swing runs parallel to the swing.
 */
function capsuleTop(s: FlatSlice, side: number, u: number, way: 1 | -1): number | null {
  const off = u - s.u
  let t = way * s.dv >= 0 ? s.reach : -s.reach
  if (s.du > 1e-9) {
    const from = Math.max(-s.reach, (off - side) / s.du)
    const to = Math.min(s.reach, (off + side) / s.du)
    if (from > to) return null
    t = Math.min(to, Math.max(from, (off + way * side * s.dv) / s.du))
  } else if (Math.abs(off) > side) return null
  const w = off - t * s.du
  return s.v + t * s.dv + way * Math.sqrt(Math.max(0, side * side - w * w))
}
