/** A room seen from a model's own coordinates: the model stays as it was read and indexed, wherever it is placed. */
import type { MeshObstacle, Vec2, Vec3 } from '../../plan/types'
import type { Plane, Room, Slice } from '../room/types'
import { radians } from '../vec'

/** Where a model stands: p = at + scale x turn(q). The up axis is dealt with when its triangles are taken up. */
export interface Placement {
  at: Vec3
  cos: number
  sin: number
  scale: number
}

export function placementOf(mesh: MeshObstacle): Placement {
  const turn = radians(mesh.turn ?? 0)
  return { at: mesh.at ?? [0, 0, 0], cos: Math.cos(turn), sin: Math.sin(turn), scale: mesh.scale ?? 1 }
}

/** From the model's coordinates to the plan's. */
export function toPlan(p: Placement, [x, y, z]: Vec3): Vec3 {
  return [
    p.at[0] + p.scale * (p.cos * x - p.sin * y),
    p.at[1] + p.scale * (p.sin * x + p.cos * y),
    p.at[2] + p.scale * z,
  ]
}

/** From the plan's coordinates to the model's. */
export function toModel(p: Placement, [x, y, z]: Vec3): Vec3 {
  const [dx, dy] = [(x - p.at[0]) / p.scale, (y - p.at[1]) / p.scale]
  return [p.cos * dx + p.sin * dy, -p.sin * dx + p.cos * dy, (z - p.at[2]) / p.scale]
}

const turned = (p: Placement, x: number, y: number): Vec2 => [p.cos * x + p.sin * y, -p.sin * x + p.cos * y]

/** The same room in the model's coordinates. Lengths come out in the model's units; stations and corners stay. */
export function roomInModel(room: Room, p: Placement): Room {
  const move = (s: Slice): Slice => {
    const [x, y, z] = toModel(p, [s.x, s.y, s.z])
    const [dx, dy] = turned(p, s.dx, s.dy)
    return { ...s, x, y, z, dx, dy, radius: s.radius / p.scale, reach: s.reach / p.scale }
  }
  const { frame } = room
  const along = turned(p, frame.along[0], frame.along[1])
  const left = turned(p, frame.left[0], frame.left[1])
  return {
    ...room,
    slices: room.slices.map(move),
    ends: room.ends.map((f) => {
      const [x, y] = toModel(p, [f.x, f.y, 0])
      return { x, y, reach: f.reach / p.scale, slices: f.slices.map(move) }
    }),
    side: room.side / p.scale,
    lid: lidInModel(room.lid, p),
    // Shrunk with the rest: a station found from these is still the girder's own.
    frame: {
      ...frame,
      origin: toModel(p, frame.origin),
      along: [along[0] / p.scale, along[1] / p.scale, frame.along[2]],
      left: [left[0], left[1], 0],
      planRate: frame.planRate / p.scale,
    },
  }
}

function lidInModel(lid: Plane, p: Placement): Plane {
  const [gx, gy] = turned(p, lid.gx, lid.gy)
  const here = lid.z0 + lid.gx * p.at[0] + lid.gy * p.at[1]
  return { z0: (here - p.at[2]) / p.scale, gx, gy }
}
