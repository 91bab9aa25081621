import type { BufferGeometry } from 'three'

/** Volume enclosed by a closed surface with outward faces: the divergence theorem over its triangles, m3. */
export function volumeOf(geometry: BufferGeometry): number {
  const p = geometry.getAttribute('position').array
  const index = geometry.index?.array ?? Array.from({ length: p.length / 3 }, (_, i) => i)
  let six = 0
  for (let t = 0; t < index.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => {
      const i = 3 * index[t + k]!
      return [p[i]!, p[i + 1]!, p[i + 2]!] as const
    }) as [
      readonly [number, number, number],
      readonly [number, number, number],
      readonly [number, number, number],
    ]
    six +=
      a[0] * (b[1] * c[2] - b[2] * c[1]) +
      a[1] * (b[2] * c[0] - b[0] * c[2]) +
      a[2] * (b[0] * c[1] - b[1] * c[0])
  }
  return six / 6
}
