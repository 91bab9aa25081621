/**
 * The union of the lines' rooms as one closed surface. Overlapping surfaces are joined by manifold-3d, a WebAssembly
 * library that is started by a promise and, in a window, from an address of its own: that is why this stands here and not
 * in the geometry, which is pure and answers at once.
 */
import start, { type Manifold, type ManifoldToplevel } from 'manifold-3d'
import type { Solid } from './solid'

export interface United extends Solid {
  /** m3. */
  volume: number
  /** Pieces that do not touch each other. */
  pieces: number
}

let started: Promise<ManifoldToplevel> | null = null

/** Starts the library once; `address` is where manifold.wasm lies in a window, nothing in Node. */
function engine(address?: string): Promise<ManifoldToplevel> {
  started ??= start(address ? { locateFile: () => address } : undefined)
    .then((top) => {
      top.setup()
      return top
    })
    .catch((error: unknown) => {
      started = null
      throw error
    })
  return started
}

/** One closed, orientable surface around everything that lies in any of these; null for none, or a text that says why not. */
export async function unite(
  solids: readonly Solid[],
  name: string,
  address?: string,
): Promise<United | null | string> {
  if (solids.length === 0) return null
  const held: Manifold[] = []
  try {
    const top = await engine(address)
    for (const solid of solids) held.push(taken(top, solid))
    const union = top.Manifold.union(held)
    held.push(union)
    return united(union, name, held)
  } catch (error) {
    return error instanceof Error && error.message ? error.message : 'the surfaces could not be joined'
  } finally {
    // Its memory is not the collector's.
    for (const one of held) one.delete()
  }
}

function taken(top: ManifoldToplevel, { name, positions, indices }: Solid): Manifold {
  const mesh = new top.Mesh({ numProp: 3, vertProperties: positions, triVerts: indices })
  mesh.merge()
  try {
    return new top.Manifold(mesh)
  } catch {
    throw new Error(`the fall room of ${name} is no closed surface`)
  }
}

function united(union: Manifold, name: string, held: Manifold[]): United {
  const mesh = union.getMesh()
  const parts = union.decompose()
  held.push(...parts)
  return {
    name,
    positions: Float32Array.from(mesh.vertProperties),
    indices: Uint32Array.from(mesh.triVerts),
    volume: union.volume(),
    pieces: parts.length,
  }
}
