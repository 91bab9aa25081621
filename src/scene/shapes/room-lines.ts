/** The lines that are drawn on a room's skin: its lowest line, and its rim at the girder's top. */
import { girderFrame, stationOf, topPoint } from '../../geometry/girder'
import type { Skin } from '../../geometry/room/skin/skin'
import type { Girder, Vec3 } from '../../plan/types'
import { chain } from './solid'

/** A girder's top, lowered, as a plane z = z0 + gx x + gy y: [gx, gy, z0]. */
function planeUnder(girder: Girder, below: number): [number, number, number] {
  const { origin, along, planRate, rise } = girderFrame(girder)
  const [gx, gy] = [(along[0] * rise) / planRate ** 2, (along[1] * rise) / planRate ** 2]
  return [gx, gy, origin[2] - below - gx * origin[0] - gy * origin[1]]
}

/** The plane of a girder's underside. */
export const soffitOf = (girder: Girder): [number, number, number] => planeUnder(girder, girder.section.depth)

/**
 * How low the room reaches along the line, as a side view shows it: drawn in one vertical plane over the middle of the
 * lowest points, for at one place along the line the room may reach equally low on both sides of it.
 */
export function keelOf(spine: readonly Vec3[], girder: Girder | undefined): number[] {
  if (!girder || spine.length === 0) return []
  const frame = girderFrame(girder)
  const at = spine.map((p) => stationOf(frame, p))
  const offset = at.map((p) => p.offset).sort((a, b) => a - b)[Math.floor(at.length / 2)]!
  return chain(
    spine.map((p, i): Vec3 => {
      const [x, y] = topPoint(frame, at[i]!.station, offset)
      return [x, y, p[2]]
    }),
  )
}

/** A vertex counts as on the rim within this of the girder's top, m. */
const RIM = 0.005

/** The edges in which the skin's walls meet the girder's top: those of triangles with just two corners up there. */
export function rimOf({ positions, indices }: Skin, girder: Girder | undefined): number[] {
  if (!girder) return []
  const [gx, gy, z0] = planeUnder(girder, 0)
  const up = (i: number): boolean => {
    const [x, y, z] = [positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!]
    return Math.abs(z - z0 - gx * x - gy * y) < RIM
  }
  const rim: number[] = []
  for (let t = 0; t < indices.length; t += 3) {
    const corners = [indices[t]!, indices[t + 1]!, indices[t + 2]!].filter(up)
    if (corners.length !== 2) continue
    for (const i of corners) rim.push(positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!)
  }
  return rim
}
