/** Rooms of a few swings at random, without a line behind them, so that every swing can be tried against everything. */

import { girderFrame } from '../../../src/geometry/girder'
import type { Room, Slice } from '../../../src/geometry/room/types'
import type { Vec2, Vec3 } from '../../../src/plan/types'
import { testGirder } from './rooms'

type Random = () => number
const between = (random: Random, low: number, high: number): number => low + (high - low) * random()

/** Swings square to a sloping girder, or nearly, and a fan past each end; everything within 12 m of the origin. */
export function smallRoom(random: Random, count = 14): Room {
  const angle = between(random, 0, 2 * Math.PI)
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  const frame = girderFrame(
    testGirder('G', [-5 * c, -5 * s, 17], [5 * c, 5 * s, 17 + between(random, -1, 1)]),
  )
  // The line runs beside the girder's middle, a little askew.
  const placeAt = (station: number): Vec2 => {
    const offset = 0.06 * (station - 4)
    return [
      frame.origin[0] + station * frame.along[0] + offset * frame.left[0],
      frame.origin[1] + station * frame.along[1] + offset * frame.left[1],
    ]
  }
  const swing = (station: number, turn: number): Slice => {
    const at = placeAt(station)
    const way = Math.atan2(frame.left[1], frame.left[0]) + turn
    const radius = between(random, 2, 4.5)
    return {
      x: at[0],
      y: at[1],
      z: 17 + station * frame.rise + between(random, -0.8, 0.8),
      dx: Math.cos(way),
      dy: Math.sin(way),
      radius,
      reach: radius * between(random, 0.1, 0.9),
      station,
      corner: Math.floor(random() * 4),
    }
  }
  const stations = Array.from({ length: count }, () => between(random, 1, 9)).sort((a, b) => a - b)
  const slices = stations.flatMap((station) => [swing(station, 0), swing(station, 0)])
  const ends = [1, 9].map((station) => {
    const fan = Array.from({ length: 20 }, (_, i) => ({ ...swing(station, (i + 1) * 0.07), corner: 0 }))
    const [x, y] = [fan[0]!.x, fan[0]!.y]
    return { x, y, reach: Math.max(...fan.map((f) => f.reach)), slices: fan }
  })
  const gx = (frame.along[0] / frame.planRate ** 2) * frame.rise
  const gy = (frame.along[1] / frame.planRate ** 2) * frame.rise
  return {
    line: 'L',
    girder: 'G',
    frame,
    corners: [],
    slices,
    ends,
    side: between(random, 0.2, 0.9),
    lid: { z0: frame.origin[2] - gx * frame.origin[0] - gy * frame.origin[1], gx, gy },
    surface: [],
    unknown: null,
  }
}

/** Corners in space of triangles all about a room, some upright, some over its girder. In steps of 1/64 m: a float keeps those. */
export function triangles(random: Random, count: number): [Vec3, Vec3, Vec3][] {
  const grid = (v: number): number => Math.round(v * 64) / 64
  return Array.from({ length: count }, () => {
    const c: Vec3 = [between(random, -9, 9), between(random, -9, 9), between(random, 8, 19)]
    const near = (): Vec3 => [
      grid(c[0] + between(random, -1, 1)),
      grid(c[1] + between(random, -1, 1)),
      grid(c[2] + between(random, -1, 1)),
    ]
    const [a, b] = [near(), near()]
    return random() < 0.2 ? [a, b, [a[0], a[1], a[2] + 1]] : [a, b, near()]
  })
}
