/** Where the workers of a line who have not fallen are drawn: standing on the girder, spread along the line. */
import type { Girder, Line, Vec3, Worker } from '../../plan/types'
import type { LineDetail } from '../../study/details'
import { overGirder } from '../place'

export interface Standing {
  worker: Worker
  feet: Vec3
  dRing: Vec3
  /** Where the connector holds the rope. */
  rope: Vec3
}

/** A worker stands this far beside the line, towards the girder's middle, m. */
const BESIDE = 0.35

/** Everybody on the line but the one who hangs. A picture only: where they stand enters no computation. */
export function standingCrew(
  workers: readonly Worker[],
  line: Line,
  girder: Girder,
  detail: LineDetail | undefined,
  hanging: string | null,
): Standing[] {
  const rope = detail?.installedRope ?? []
  const crew = workers.filter((w) => w.line === line.id && w.id !== hanging)
  if (rope.length < 2) return []
  return crew.flatMap((worker, i) => {
    const station = spot(line, i, crew.length)
    const at = station === null ? null : stand(girder, line, worker, station, rope)
    return at ? [at] : []
  })
}

/** Even places along the line, in the quarters of its spans rather than at posts. */
function spot(line: Line, i: number, of: number): number | null {
  const spans = line.stanchions.length - 1
  const k = Math.floor(((i + 0.5) / of) * spans)
  const [a, b] = [line.stanchions[k], line.stanchions[k + 1]]
  return a && b ? a.station + (b.station - a.station) * 0.28 : null
}

function stand(
  girder: Girder,
  line: Line,
  worker: Worker,
  station: number,
  rope: readonly Vec3[],
): Standing | null {
  const offset = line.stanchions[0]?.offset ?? 0
  const beside = offset > 0 ? offset - BESIDE : offset + BESIDE
  const feet = overGirder(girder, station, beside, 0)
  const hold = nearestOnRope(rope, feet)
  return hold && { worker, feet, dRing: [feet[0], feet[1], feet[2] + worker.dRingHeight], rope: hold }
}

/** The point of a polyline that is nearest in plan. */
function nearestOnRope(rope: readonly Vec3[], p: Vec3): Vec3 | null {
  let best: Vec3 | null = null
  let least = Number.POSITIVE_INFINITY
  for (const q of rope) {
    const d = Math.hypot(q[0] - p[0], q[1] - p[1])
    if (d < least) [best, least] = [q, d]
  }
  return best
}
