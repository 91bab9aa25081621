/** Closed surfaces in files, read by the formats' own rules. */
import { WebIO } from '@gltf-transform/core'

export interface Surface {
  /** Three corners of each triangle, z up. */
  triangles: number[][][]
  /** Names of those corners: corners of one name are the same. */
  corners: string[][]
}

/** Binary STL: 80 bytes of words, a count, then 50 bytes a triangle of which the first twelve are its normal. */
export function stlSurface(bytes: Uint8Array): Surface {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const count = view.getUint32(80, true)
  if (bytes.byteLength !== 84 + 50 * count) throw new Error('the STL file is not as long as it says')
  const triangles = Array.from({ length: count }, (_, t) =>
    [0, 1, 2].map((c) => [0, 4, 8].map((k) => view.getFloat32(84 + 50 * t + 12 + 12 * c + k, true))),
  )
  return { triangles, corners: triangles.map((t) => t.map(String)) }
}

/** From y up, as the format has it, to z up. A corner is named by its index. */
export async function glbSurface(bytes: Uint8Array): Promise<Surface> {
  const root = (await new WebIO().readBinary(bytes)).getRoot()
  const primitives = root.listMeshes().flatMap((mesh) => mesh.listPrimitives())
  const corners = primitives.flatMap((primitive, p) => {
    const indices = [...primitive.getIndices()!.getArray()!].map((i) => `${p}:${i}`)
    return Array.from({ length: indices.length / 3 }, (_, t) => indices.slice(3 * t, 3 * t + 3))
  })
  const at = primitives.map((primitive) => primitive.getAttribute('POSITION')!.getArray()!)
  const point = (name: string): number[] => {
    const [p, i] = name.split(':').map(Number)
    return [at[p!]![3 * i!]!, -at[p!]![3 * i! + 2]!, at[p!]![3 * i! + 1]!]
  }
  return { triangles: corners.map((t) => t.map(point)), corners }
}

/**
 * The most that an edge is run, and how many are not run as often one way as the other: 0 for a closed, orientable surface.
 * Where it touches itself along an edge and corners are named by their place, that edge is run twice each way.
 */
export function edgesOf({ corners }: Surface): { most: number; open: number } {
  const runs = new Map<string, number>()
  for (const [a, b, c] of corners) {
    for (const edge of [`${a} ${b}`, `${b} ${c}`, `${c} ${a}`]) runs.set(edge, (runs.get(edge) ?? 0) + 1)
  }
  const back = (edge: string): string => edge.split(' ').reverse().join(' ')
  const open = [...runs].filter(([edge, times]) => runs.get(back(edge)) !== times).length
  return { most: Math.max(...runs.values()), open }
}

/** By the divergence theorem, m3; positive where the faces look outwards. */
export const volumeOf = ({ triangles }: Surface): number =>
  triangles.reduce((sum, [a, b, c]) => {
    const [x, y, z] = [0, 1, 2].map((k) => {
      const [i, j] = [(k + 1) % 3, (k + 2) % 3]
      return a![k]! * (b![i]! * c![j]! - b![j]! * c![i]!)
    })
    return sum + (x! + y! + z!) / 6
  }, 0)
