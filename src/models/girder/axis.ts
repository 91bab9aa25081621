/** The long axis of a solid from its triangles. */
import type { Vec3 } from '../../plan/types'

/** Direction of the greatest extent: the main axis of the surface's second moments (power iteration). */
export function longAxis(triangles: Float32Array): { centre: Vec3; axis: Vec3 } {
  const { centre, moments } = surfaceMoments(triangles)
  let axis: Vec3 = [1, 0.7, 0.3]
  for (let i = 0; i < 200; i++) {
    const next = [0, 1, 2].map((r) => [0, 1, 2].reduce((sum, c) => sum + moments[r * 3 + c]! * axis[c]!, 0))
    const size = Math.hypot(...next)
    if (size === 0) break
    axis = next.map((v) => v / size) as Vec3
  }
  return { centre, axis }
}

/** Centroid and second moments of the surface, weighted by area, so that the way it is cut into triangles is no matter. */
function surfaceMoments(t: Float32Array): { centre: Vec3; moments: number[] } {
  let area = 0
  const first = [0, 0, 0]
  const second = new Array<number>(9).fill(0)
  for (let i = 0; i < t.length; i += 9) {
    const p = [0, 1, 2].map((k) => [t[i + 3 * k]!, t[i + 3 * k + 1]!, t[i + 3 * k + 2]!])
    const a = triangleArea(p)
    area += a
    // Exact for a quadratic over a triangle: the three mid-edge points, each with a third of the area.
    for (let k = 0; k < 3; k++) {
      const q = [0, 1, 2].map((c) => (p[k]![c]! + p[(k + 1) % 3]![c]!) / 2)
      for (let r = 0; r < 3; r++) {
        first[r]! += (a / 3) * q[r]!
        for (let c = 0; c < 3; c++) second[r * 3 + c]! += (a / 3) * q[r]! * q[c]!
      }
    }
  }
  const centre = first.map((v) => v / area) as Vec3
  const moments = second.map((v, i) => v / area - centre[Math.floor(i / 3)]! * centre[i % 3]!)
  return { centre, moments }
}

function triangleArea(p: number[][]): number {
  const [a, b, c] = p as [number[], number[], number[]]
  const u = [0, 1, 2].map((k) => b[k]! - a[k]!)
  const v = [0, 1, 2].map((k) => c[k]! - a[k]!)
  return (
    Math.hypot(u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!) /
    2
  )
}
