/** Closed surfaces as one binary STL file: metres, z up as in the plan. */
import type { Solid } from './solid'

/** The file's bytes; null for no surface. */
export function solidsStl(solids: readonly Solid[]): Uint8Array | null {
  const count = solids.reduce((sum, s) => sum + s.indices.length / 3, 0)
  if (count === 0) return null
  const view = new DataView(new ArrayBuffer(84 + 50 * count))
  new TextEncoder().encodeInto('Fallroom: fall room, metres, z up', new Uint8Array(view.buffer, 0, 80))
  view.setUint32(80, count, true)
  let at = 84
  for (const { positions, indices } of solids) {
    for (let t = 0; t < indices.length; t += 3) {
      const corners = [0, 1, 2].map((k) => positions.subarray(indices[t + k]! * 3, indices[t + k]! * 3 + 3))
      const numbers = [...normalOf(corners), ...corners.flatMap((p) => [...p])]
      for (const [i, v] of numbers.entries()) view.setFloat32(at + 4 * i, v, true)
      at += 50
    }
  }
  return new Uint8Array(view.buffer)
}

/** Unit normal of a triangle; zero where it has no area, as the format allows. */
function normalOf(corners: Float32Array[]): number[] {
  const [a, b, c] = corners as [Float32Array, Float32Array, Float32Array]
  const u = [b[0]! - a[0]!, b[1]! - a[1]!, b[2]! - a[2]!] as const
  const v = [c[0]! - a[0]!, c[1]! - a[1]!, c[2]! - a[2]!] as const
  const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]]
  const size = Math.hypot(...n)
  return size > 0 ? n.map((x) => x / size) : [0, 0, 0]
}
