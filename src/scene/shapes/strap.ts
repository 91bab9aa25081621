/** Tie-back legs as flat bands from head to loop: both legs of every tie-back of a line, in plan coordinates. */
import { headHeight } from '../../geometry/line'
import { type Leg, tieBackLegs } from '../../geometry/tie-back'
import type { Girder, Line, Part, TieBack, Vec3 } from '../../plan/types'
import { overGirder } from '../place'

/** Width of a strap in the picture, m; the plan does not tell it. */
const BAND = 0.05

export interface StrapLeg {
  tieBack: string
  foot: Leg['which']
  head: Vec3
  /** At the loop's foot on the girder's top, where mechanics takes it. */
  end: Vec3
  angle: number
}

/** Legs whose loops exist. */
export const strapLegs = (line: Line, girder: Girder, parts: readonly Part[]): StrapLeg[] =>
  line.tieBacks.flatMap((t) => legsOf(parts, girder, line, t))

function legsOf(parts: readonly Part[], girder: Girder, line: Line, tieBack: TieBack): StrapLeg[] {
  const index = line.stanchions.findIndex((s) => s.id === tieBack.stanchion)
  const stanchion = line.stanchions[index]
  const height = stanchion && headHeight({ parts }, stanchion)
  if (!stanchion || height === null || height === undefined) return []
  const head = overGirder(girder, stanchion.station, stanchion.offset, height)
  return tieBackLegs(girder, stanchion, height, index === 0 ? -1 : 1, tieBack).flatMap((leg) => {
    if (!leg.loop) return []
    const end = overGirder(girder, leg.loop.station, leg.loop.row.offset, 0)
    return [{ tieBack: tieBack.id, foot: leg.which, head, end, angle: leg.angle }]
  })
}

/** The four corners of a leg's band: level across its run, so that it shows its flat side from above. */
function band({ head, end }: StrapLeg): Vec3[] {
  const [dx, dy] = [end[0] - head[0], end[1] - head[1]]
  const run = Math.hypot(dx, dy) || 1
  const [sx, sy] = [(-dy / run) * (BAND / 2), (dx / run) * (BAND / 2)]
  return [
    [head[0] + sx, head[1] + sy, head[2]],
    [head[0] - sx, head[1] - sy, head[2]],
    [end[0] - sx, end[1] - sy, end[2]],
    [end[0] + sx, end[1] + sy, end[2]],
  ]
}

export function strapTriangles(legs: readonly StrapLeg[]): number[] {
  return legs.flatMap((leg) => {
    const [a, b, c, d] = band(leg) as [Vec3, Vec3, Vec3, Vec3]
    return [a, b, c, a, c, d].flat()
  })
}

export function strapEdges(legs: readonly StrapLeg[]): number[] {
  return legs.flatMap((leg) => {
    const [a, b, c, d] = band(leg) as [Vec3, Vec3, Vec3, Vec3]
    return [b, c, d, a].flat()
  })
}
