/** One picture of a fall's history, mixed between two frames, into arrays that are kept. */
import type { FallHistory } from '../../solver/time/types'
import type { Unroll } from './unroll'

export interface FallPicture {
  /** x, y, z of every node of the rope. */
  rope: Float32Array
  /** x, y, z of every worker's D-ring. */
  rings: Float32Array
  /** x, y, z of where every connector is tied. */
  ties: Float32Array
  /** Which connectors are slack. */
  slack: boolean[]
}

export const emptyPicture = (h: FallHistory): FallPicture => ({
  rope: new Float32Array(h.nodes * 3),
  rings: new Float32Array(h.workers * 3),
  ties: new Float32Array(h.workers * 3),
  slack: new Array<boolean>(h.workers).fill(true),
})

/**
 * Fills a picture at a frame (need not be whole; ends are clamped). `exaggerate` multiplies how far the rope has moved
 * down from the first frame; bodies keep their distance to where they are tied.
 */
export function fillPicture(
  picture: FallPicture,
  h: FallHistory,
  frame: number,
  unroll: Unroll,
  exaggerate = 1,
): void {
  const f = Math.min(Math.max(0, frame), h.frames - 1)
  const a = Math.floor(f)
  const b = Math.min(h.frames - 1, a + 1)
  const t = f - a
  const mix = (values: Float32Array, of: number, i: number): number =>
    values[a * of + i]! * (1 - t) + values[b * of + i]! * t
  const stretched = (i: number, z: number): number => h.z[i]! + (z - h.z[i]!) * exaggerate
  for (let i = 0; i < h.nodes; i++) {
    unroll(mix(h.x, h.nodes, i), stretched(i, mix(h.z, h.nodes, i)), picture.rope, i * 3)
  }
  for (let w = 0; w < h.workers; w++) {
    const node = h.attachedNode[w]!
    const [x, z] = [mix(h.workerX, h.workers, w), mix(h.workerZ, h.workers, w)]
    const moved = node < 0 ? 0 : stretched(node, mix(h.z, h.nodes, node)) - mix(h.z, h.nodes, node)
    unroll(x, z + moved, picture.rings, w * 3)
    picture.ties.set(node < 0 ? nearest(picture, w) : picture.rope.subarray(node * 3, node * 3 + 3), w * 3)
    picture.slack[w] = mix(h.connectorForce, h.workers, w) <= 0
  }
}

/** Tied to a stanchion: the rope's node nearest in plan stands for its head. */
function nearest({ rope, rings }: FallPicture, w: number): Float32Array {
  let best = 0
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < rope.length; i += 3) {
    const d = Math.hypot(rope[i]! - rings[w * 3]!, rope[i + 1]! - rings[w * 3 + 1]!)
    if (d < least) [best, least] = [i, d]
  }
  return rope.subarray(best, best + 3)
}
