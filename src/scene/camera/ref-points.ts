/** Points that hold a thing of the plan, for flying to it. */
import { crossFrameBars } from '../../geometry/gaps/girder-solid'
import { girderFrame } from '../../geometry/girder'
import type { Girder, Line, Obstacle, Plan, Stanchion, Vec3 } from '../../plan/types'
import { type Ref, resolveRef } from '../../state/refs'
import { overGirder } from '../place'

/** Corners that must be in the picture; none where the plan no longer has the thing or it has no place. */
export function refPoints(plan: Plan, ref: Ref): Vec3[] {
  const found = resolveRef(plan, ref)
  switch (found?.kind) {
    case 'girder':
    case 'loop-row':
      return along(found.girder, 0, girderFrame(found.girder).length, -3)
    case 'deck':
      return found.deck.outline.map(([x, y]): Vec3 => [x, y, found.deck.elevation])
    case 'line':
      return linePoints(plan, found.line)
    case 'stanchion':
      return stanchionPoints(plan, found.line, found.stanchion)
    case 'tie-back': {
      const post = found.line.stanchions.find((s) => s.id === found.tieBack.stanchion)
      return post ? stanchionPoints(plan, found.line, post) : []
    }
    case 'worker':
      return linePoints(
        plan,
        plan.lines.find((l) => l.id === found.worker.line),
      )
    case 'obstacle':
      return obstaclePoints(plan, found.obstacle)
    case undefined:
      return []
  }
}

function along(girder: Girder, from: number, to: number, below: number): Vec3[] {
  return [from, to].flatMap((s) => [overGirder(girder, s, 0, 1.2), overGirder(girder, s, 0, below)])
}

function linePoints(plan: Plan, line: Line | undefined): Vec3[] {
  const girder = plan.girders.find((g) => g.id === line?.girder)
  const [first, last] = [line?.stanchions[0], line?.stanchions.at(-1)]
  return girder && first && last ? along(girder, first.station - 1.5, last.station + 1.5, -5) : []
}

function stanchionPoints(plan: Plan, line: Line, { station, offset }: Stanchion): Vec3[] {
  const girder = plan.girders.find((g) => g.id === line.girder)
  if (!girder) return []
  return [-2, 2].flatMap((s) => [
    overGirder(girder, station + s, offset, 1.6),
    overGirder(girder, station + s, offset, -0.6),
  ])
}

function obstaclePoints(plan: Plan, o: Obstacle): Vec3[] {
  switch (o.kind) {
    case 'lane':
      return o.path.flatMap(([x, y, z]): Vec3[] => [
        [x - o.width / 2, y - o.width / 2, z],
        [x + o.width / 2, y + o.width / 2, z + o.clearHeight + 2],
      ])
    case 'box':
      return about(o.center, Math.max(...o.size) * 0.75 + 1)
    case 'mesh':
      return about(o.at ?? [0, 0, 0], 6)
    case 'cross-frame':
      return (crossFrameBars(plan, o) ?? []).flatMap(({ from, to }) => [...about(from, 1), ...about(to, 1)])
    case 'ground':
    case 'water':
      return []
  }
}

const about = ([x, y, z]: Vec3, reach: number): Vec3[] =>
  [-reach, reach].map((d): Vec3 => [x + d, y + d, z + d])
