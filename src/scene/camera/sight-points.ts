/** Places on a thing of the plan that should be seen when it is flown to. */
import { crossFrameBars } from '../../geometry/gaps/girder-solid'
import { girderFrame } from '../../geometry/girder'
import { headHeight } from '../../geometry/line'
import { lerp } from '../../geometry/vec'
import type { Girder, Line, Obstacle, Plan, Stanchion, Vec3 } from '../../plan/types'
import { type Ref, resolveRef } from '../../state/refs'
import { overGirder } from '../place'
import { strapLegs } from '../shapes/strap'

/** None where the plan no longer has the thing, or where it is everywhere. */
export function sightPoints(plan: Plan, ref: Ref): Vec3[] {
  const found = resolveRef(plan, ref)
  switch (found?.kind) {
    case 'girder':
      return onTop(found.girder, 0)
    case 'loop-row':
      return onTop(found.girder, found.row.offset)
    case 'deck':
      return found.deck.outline.map(([x, y]): Vec3 => [x, y, found.deck.elevation + RAISED])
    case 'line':
      return heads(plan, found.line)
    case 'worker': {
      const line = plan.lines.find((l) => l.id === found.worker.line)
      return line ? heads(plan, line) : []
    }
    case 'stanchion':
      return post(plan, found.line, found.stanchion)
    case 'tie-back':
      return legs(plan, found.line, found.tieBack.id)
    case 'obstacle':
      return ofObstacle(plan, found.obstacle)
    case undefined:
      return []
  }
}

/** Over the surface that they stand on, so that it does not hide them, m. */
const RAISED = 0.15

const PARTS = [0.1, 0.3, 0.5, 0.7, 0.9]

function onTop(girder: Girder, offset: number): Vec3[] {
  const { length } = girderFrame(girder)
  return PARTS.map((part) => overGirder(girder, part * length, offset, RAISED))
}

const heads = (plan: Plan, line: Line): Vec3[] =>
  line.stanchions.flatMap((s) => post(plan, line, s).slice(-1))

/** Middle and head. */
function post(plan: Plan, line: Line, stanchion: Stanchion): Vec3[] {
  const girder = plan.girders.find((g) => g.id === line.girder)
  const height = headHeight(plan, stanchion) ?? 1
  const at = (part: number): Vec3[] =>
    girder ? [overGirder(girder, stanchion.station, stanchion.offset, part * height)] : []
  return [...at(0.5), ...at(1)]
}

function legs(plan: Plan, line: Line, tieBack: string): Vec3[] {
  const girder = plan.girders.find((g) => g.id === line.girder)
  const found = girder ? strapLegs(line, girder, plan.parts).filter((leg) => leg.tieBack === tieBack) : []
  return found.flatMap(({ head, end }) => [lerp(head, end, 0.25), lerp(head, end, 0.75)])
}

function ofObstacle(plan: Plan, o: Obstacle): Vec3[] {
  switch (o.kind) {
    case 'lane':
      return o.path.slice(1).map((p, i): Vec3 => {
        const [x, y, z] = lerp(o.path[i]!, p, 0.5)
        return [x, y, z + RAISED]
      })
    case 'box': {
      const [x, y, z] = o.center
      return [-0.4, 0, 0.4].map((part): Vec3 => [x, y, z + part * o.size[2]])
    }
    case 'mesh':
      return [o.at ?? [0, 0, 0]]
    case 'cross-frame':
      return (crossFrameBars(plan, o) ?? []).flatMap(({ from, to }) =>
        [0.25, 0.5, 0.75].map((part) => lerp(from, to, part)),
      )
    case 'ground':
    case 'water':
      return []
  }
}
