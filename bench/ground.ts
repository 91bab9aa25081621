/** What stands under the lines in the benches: a ground of as many triangles as wanted, and boxes. */
import type { Obstacle } from '../src/plan/types'

/** A hilly ground of 2 x n x n triangles, 120 m square, under the lines. */
export function terrain(n: number): Float32Array {
  const out = new Float32Array(n * n * 18)
  const at = (i: number, k: number): [number, number, number] => {
    const [x, y] = [(120 * i) / n - 40, (120 * k) / n - 60]
    return [x, y, 6 + 1.5 * Math.sin(x * 0.7) * Math.cos(y * 0.5) + 0.1 * Math.sin(9 * x + 5 * y)]
  }
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < n; k++) {
      const [a, b, c, d] = [at(i, k), at(i + 1, k), at(i + 1, k + 1), at(i, k + 1)]
      out.set([...a, ...b, ...c, ...a, ...c, ...d], (i * n + k) * 18)
    }
  }
  return out
}

/** Sixty boxes spread over the site. */
export const boxes = (): Obstacle[] =>
  Array.from({ length: 60 }, (_, i): Obstacle => {
    const center: [number, number, number] = [(i * 7) % 40, (i * 11) % 60, 8 + (i % 5)]
    return { id: `O${i}`, name: 'b', kind: 'box', center, size: [2, 2, 3], turn: i * 13 }
  })

/** Triangles as a binary STL file. */
export function stl(triangles: Float32Array): Uint8Array {
  const count = triangles.length / 9
  const bytes = new DataView(new ArrayBuffer(84 + 50 * count))
  bytes.setUint32(80, count, true)
  for (let t = 0; t < count; t++)
    for (let k = 0; k < 9; k++) bytes.setFloat32(84 + 50 * t + 12 + 4 * k, triangles[t * 9 + k]!, true)
  return new Uint8Array(bytes.buffer)
}
