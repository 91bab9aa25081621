/** Where a camera must stand to see some points whole, looking in a given direction. */
import { Vector3 } from 'three'
import type { Vec3 } from '../../plan/types'

export interface Shot {
  position: Vec3
  target: Vec3
}

export interface Lens {
  /** Vertical angle of view, degrees. */
  fov: number
  /** Width over height. */
  aspect: number
}

/** Part of the picture that the points may fill. */
const FILL = 0.86
/** The camera keeps at least this far from every point, m: one at the lens itself is not seen. */
const NEAREST = 1

/**
 * A shot from `from` (direction target to camera; need not be of unit length) that holds all points, nearest that it
 * can be. The points' middle as seen is moved to the middle of the picture in three rounds.
 */
export function frameShot(points: readonly Vec3[], from: Vec3, lens: Lens): Shot {
  const back = new Vector3(...from).normalize()
  const side = new Vector3(0, 0, 1).cross(back)
  if (side.lengthSq() < 1e-8) side.set(1, 0, 0)
  side.normalize()
  const up = back.clone().cross(side)
  const tanY = Math.tan((lens.fov * Math.PI) / 360) * FILL
  const tanX = tanY * lens.aspect
  const target = middle(points)
  let distance = 2
  for (let round = 0; round < 4; round++) {
    const seen = points.map((p) => {
      const q = new Vector3(...p).sub(target)
      return { x: q.dot(side), y: q.dot(up), near: q.dot(back) }
    })
    const needed = (q: { x: number; y: number; near: number }): number =>
      q.near + Math.max(NEAREST, Math.abs(q.x) / tanX, Math.abs(q.y) / tanY)
    distance = Math.max(2, ...seen.map(needed))
    if (round < 3) centre(target, seen, distance, side, up)
  }
  return { position: target.clone().addScaledVector(back, distance).toArray(), target: target.toArray() }
}

function middle(points: readonly Vec3[]): Vector3 {
  const sum = new Vector3()
  for (const p of points) sum.add(new Vector3(...p))
  return sum.divideScalar(Math.max(1, points.length))
}

function centre(
  target: Vector3,
  seen: readonly { x: number; y: number; near: number }[],
  distance: number,
  side: Vector3,
  up: Vector3,
): void {
  const spread = (pick: (q: { x: number; y: number }) => number): number => {
    const ratios = seen.map((q) => pick(q) / Math.max(0.1, distance - q.near))
    return ((Math.min(...ratios) + Math.max(...ratios)) / 2) * distance
  }
  const [x, y] = [spread((q) => q.x), spread((q) => q.y)]
  target.addScaledVector(side, x).addScaledVector(up, y)
}
