/** How far placed models reach, for drawings that show them as boxes. */
import type { MeshBounds } from '../drawings/obstacle-shapes'
import { placementOf, toPlan } from '../geometry/gaps/placed-room'
import type { MeshObstacle, Plan, Vec3 } from '../plan/types'
import type { Models } from '../study/obstacles'

/** Bounds by obstacle id; a model that was not read has none and is not drawn. */
export function meshBounds(plan: Plan, models: Models | undefined): MeshBounds {
  const found: MeshBounds = {}
  for (const o of plan.obstacles) {
    if (o.kind !== 'mesh') continue
    const read = models?.get(o.file)
    if (read?.ok && read.value.triangles.length >= 9) found[o.id] = knownBounds(o, read.value.triangles)
  }
  return found
}

type Bounds = MeshBounds[string]

const known = new WeakMap<MeshObstacle, { of: Float32Array; bounds: Bounds }>()

/** Looked through once for each model and place: a tape is drawn anew with every change of the plan. */
function knownBounds(o: MeshObstacle, triangles: Float32Array): Bounds {
  const kept = known.get(o)
  const bounds = kept?.of === triangles ? kept.bounds : boundsOf(o, triangles)
  known.set(o, { of: triangles, bounds })
  return bounds
}

function boundsOf(o: MeshObstacle, triangles: Float32Array): Bounds {
  const placement = placementOf(o)
  const low: Vec3 = [Infinity, Infinity, Infinity]
  const high: Vec3 = [-Infinity, -Infinity, -Infinity]
  for (let i = 0; i + 2 < triangles.length; i += 3) {
    const [x, y, z] = [triangles[i]!, triangles[i + 1]!, triangles[i + 2]!]
    const at = toPlan(placement, o.upAxis === 'y' ? [x, -z, y] : [x, y, z])
    for (const k of [0, 1, 2] as const) {
      low[k] = Math.min(low[k], at[k])
      high[k] = Math.max(high[k], at[k])
    }
  }
  return { low, high }
}
