/** A strip of even width along a path in space, mitred at its bends: lanes, and straps as flat bands. */
import type { Vec3 } from '../../plan/types'

export interface Strip {
  left: Vec3[]
  right: Vec3[]
}

/** Edges of a strip that lies level across its path; bends are mitred, a hairpin's mitre is cut at twice the width. */
export function levelStrip(path: readonly Vec3[], width: number): Strip {
  const ways = path.slice(1).map((p, i) => heading(path[i]!, p))
  const strip: Strip = { left: [], right: [] }
  path.forEach((p, i) => {
    const before = ways[i - 1] ?? ways[i] ?? [1, 0]
    const after = ways[i] ?? before
    const [nx, ny] = [-(before[1] + after[1]), before[0] + after[0]]
    const size = Math.hypot(nx, ny) || 1
    const cos = Math.max(0.5, (nx * -after[1] + ny * after[0]) / size)
    const reach = width / 2 / cos / size
    strip.left.push([p[0] + nx * reach, p[1] + ny * reach, p[2]])
    strip.right.push([p[0] - nx * reach, p[1] - ny * reach, p[2]])
  })
  return strip
}

function heading(a: Vec3, b: Vec3): [number, number] {
  const d = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1
  return [(b[0] - a[0]) / d, (b[1] - a[1]) / d]
}

/** Triangles of a strip's surface, flat list of coordinates, facing up; `lift` raises it. */
export function stripTriangles({ left, right }: Strip, lift = 0): number[] {
  const up = (p: Vec3): Vec3 => [p[0], p[1], p[2] + lift]
  return left.slice(1).flatMap((l2, i) => {
    const [l1, r1, r2] = [left[i]!, right[i]!, right[i + 1]!]
    return [l1, r1, r2, l1, r2, l2].flatMap(up)
  })
}

/** Triangles of the closed body over a strip, from the strip up to `height`, outward faces. */
export function stripBody(strip: Strip, height: number): number[] {
  const { left, right } = strip
  const bottom = stripTriangles({ left: right, right: left })
  const wall = (a: Vec3, b: Vec3): number[] => {
    const [a2, b2]: [Vec3, Vec3] = [
      [a[0], a[1], a[2] + height],
      [b[0], b[1], b[2] + height],
    ]
    return [a, b, b2, a, b2, a2].flat()
  }
  const sides = left
    .slice(1)
    .flatMap((_, i) => [...wall(right[i]!, right[i + 1]!), ...wall(left[i + 1]!, left[i]!)])
  const last = left.length - 1
  return [
    ...stripTriangles(strip, height),
    ...bottom,
    ...sides,
    ...wall(left[0]!, right[0]!),
    ...wall(right[last]!, left[last]!),
  ]
}

/** Edges of that body as pairs of points. */
export function stripBodyEdges({ left, right }: Strip, height: number): number[] {
  const up = (p: Vec3): Vec3 => [p[0], p[1], p[2] + height]
  const rails = [left, right, left.map(up), right.map(up)]
  const along = rails.flatMap((rail) => rail.slice(1).flatMap((p, i) => [...rail[i]!, ...p]))
  const ends = [0, left.length - 1].flatMap((i) => {
    const [l, r] = [left[i]!, right[i]!]
    return [l, r, r, up(r), up(r), up(l), up(l), l].flat()
  })
  return [...along, ...ends]
}
