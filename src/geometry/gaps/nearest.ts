/** Least distance in any direction between a room's skin and an obstacle, to about the skin's own tolerance. */
import type { BoxObstacle, LaneObstacle, MeshObstacle, Obstacle, Vec2, Vec3 } from '../../plan/types'
import type { Skin } from '../room'
import { triangleIndex } from './bvh'
import { modelIndex, type ReadModel } from './mesh'
import { placementOf, toModel } from './placed-room'
import { boxOutline } from './solid'

/** Triangles of an upright prism over a convex outline. */
function prism(outline: Vec2[], low: number[], high: number[]): number[] {
  const at = (i: number, z: number[]): Vec3 => [...outline[i]!, z[i]!]
  const out: number[] = []
  outline.forEach((_, i) => {
    const k = (i + 1) % outline.length
    out.push(...at(i, low), ...at(k, low), ...at(k, high), ...at(i, low), ...at(k, high), ...at(i, high))
    if (i > 0 && k > 0) {
      out.push(...at(0, high), ...at(i, high), ...at(k, high), ...at(0, low), ...at(k, low), ...at(i, low))
    }
  })
  return out
}

function boxTriangles(box: BoxObstacle, centre: Vec3): number[] {
  const half = box.size[2] / 2
  const level = (z: number): number[] => [z, z, z, z]
  return prism(boxOutline(box, centre), level(centre[2] - half), level(centre[2] + half))
}

function laneTriangles({ path, width, clearHeight }: LaneObstacle): number[] {
  return path.slice(1).flatMap((b, i) => {
    const a = path[i]!
    const run = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (run === 0) return []
    const [nx, ny] = [(-(b[1] - a[1]) / run) * (width / 2), ((b[0] - a[0]) / run) * (width / 2)]
    const outline: Vec2[] = [
      [a[0] - nx, a[1] - ny],
      [b[0] - nx, b[1] - ny],
      [b[0] + nx, b[1] + ny],
      [a[0] + nx, a[1] + ny],
    ]
    const low = [a[2], b[2], b[2], a[2]]
    return prism(
      outline,
      low,
      low.map((z) => z + clearHeight),
    )
  })
}

/**
 * Least distance between a room and a box, a lane or a model, m; of a box that travels, at the ends of its path and at
 * `centre`. 0 where the gap without margin is not positive. Null for kinds whose gap already says it, and where the model
 * was not read.
 */
export function nearestDistance(
  skin: Skin,
  obstacle: Obstacle,
  gap: number | null,
  models: ReadonlyMap<string, ReadModel>,
  centre?: Vec3,
): number | null {
  if (gap !== null && gap + (obstacle.margin ?? 0) <= 0) return 0
  const { positions, indices } = skin
  const measured = (triangles: number[]): number =>
    triangleIndex(Float32Array.from(triangles)).distanceTo(positions, indices, Number.POSITIVE_INFINITY)
  switch (obstacle.kind) {
    case 'box':
      return measured(
        [obstacle.center, ...(obstacle.travel ?? []), ...(centre ? [centre] : [])].flatMap((c) =>
          boxTriangles(obstacle, c),
        ),
      )
    case 'lane':
      return measured(laneTriangles(obstacle))
    case 'mesh':
      return toMesh(skin, obstacle, models.get(obstacle.file))
    default:
      return null
  }
}

function toMesh(
  { positions, indices }: Skin,
  mesh: MeshObstacle,
  read: ReadModel | undefined,
): number | null {
  if (!read?.ok || read.value.triangles.length < 9) return null
  const placement = placementOf(mesh)
  const own = new Float32Array(positions.length)
  for (let i = 0; i < own.length; i += 3) {
    own.set(toModel(placement, [positions[i]!, positions[i + 1]!, positions[i + 2]!]), i)
  }
  const index = modelIndex(read.value.triangles, mesh.upAxis)
  return index.distanceTo(own, indices, Number.POSITIVE_INFINITY) * placement.scale
}
