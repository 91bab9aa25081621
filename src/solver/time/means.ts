/**
 * Means over 5 ms, sliding in blocks of a quarter of a millisecond, of every channel that the motion sums up: element
 * tensions, then along and down of each head. Before the start everything pulled as at the start.
 */
import { MEAN_TIME } from './types'

/** Blocks in one mean. */
const BLOCKS = 20
/** s */
export const BLOCK_TIME = MEAN_TIME / BLOCKS

export interface Means {
  /** Sums at the ends of the last blocks, a ring. */
  ring: Float64Array
  size: number
  block: number
  stepsPerBlock: number
  mean: Float64Array
}

/** @param sums those of the first step: what everything pulled at the start */
export function startMeans(sums: Float64Array, stepsPerBlock: number): Means {
  const size = sums.length
  const ring = new Float64Array(BLOCKS * size)
  for (let j = 0; j < BLOCKS; j++) {
    const before = (BLOCKS - j) % BLOCKS
    for (let i = 0; i < size; i++) ring[j * size + i] = -before * stepsPerBlock * sums[i]!
  }
  return { ring, size, block: 0, stepsPerBlock, mean: Float64Array.from(sums) }
}

/** Ends a block: new means over the last 5 ms. */
export function endBlock(m: Means, sums: Float64Array): void {
  m.block++
  const from = (m.block % BLOCKS) * m.size
  const per = 1 / (BLOCKS * m.stepsPerBlock)
  const { ring, mean, size } = m
  for (let i = 0; i < size; i++) {
    mean[i] = (sums[i]! - ring[from + i]!) * per
    ring[from + i] = sums[i]!
  }
}
