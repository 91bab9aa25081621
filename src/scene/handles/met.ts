/** What the pointer's ray meets for a drawing tool: a girder and the station on it, or a point at the tool's own level. */
import { type Object3D, type Ray, Raycaster } from 'three'
import { girderFrame, stationOf } from '../../geometry/girder'
import type { Plan, Vec3 } from '../../plan/types'
import type { Pick } from '../../state/tools/tools'
import type { Tool } from '../../state/window-state'
import { lowestLevel } from '../extent'
import { objectName } from '../names'
import { onLevel } from './rays'

const caster = new Raycaster()

/** Null where the ray meets nothing that the tool can use. */
export function metBy(ray: Ray, scene: Object3D, plan: Plan, tool: Tool['kind']): Pick | null {
  const girder = girderMet(ray, scene, plan)
  const level = onLevel(ray, levelOf(plan, tool))
  if (girder && (tool === 'draw-line' || !level)) return girder
  return level && { point: level, girder: girder?.girder ?? null }
}

function girderMet(ray: Ray, scene: Object3D, plan: Plan): Pick | null {
  const bodies = plan.girders.flatMap(
    (g) => scene.getObjectByName(objectName({ kind: 'girder', id: g.id })) ?? [],
  )
  caster.ray.copy(ray)
  const hit = caster.intersectObjects(bodies, false)[0]
  const girder = hit && plan.girders.find((g) => objectName({ kind: 'girder', id: g.id }) === hit.object.name)
  if (!girder) return null
  const point = hit.point.toArray() as Vec3
  const frame = girderFrame(girder)
  const { station } = stationOf(frame, point)
  return { point, girder: { id: girder.id, station: Math.min(frame.length, Math.max(0, station)) } }
}

/** Elevation on which a tool draws: girders and decks at the tops that are there, the rest on the ground. */
function levelOf(plan: Plan, tool: Tool['kind']): number {
  const top = plan.girders[0]?.start[2]
  const ground = lowestLevel(plan)
  if (tool === 'draw-girder' || tool === 'draw-deck' || tool === 'draw-line') return top ?? ground ?? 0
  return ground ?? top ?? 0
}
