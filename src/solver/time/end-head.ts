/** End heads on their springs, and what heads get from the rope that ends or is fixed there. */
import type { Mesh } from './mesh'
import type { Motion } from './step'
import type { TimeFallInput } from './types'

/** An end head on its spring, with the pull and place at which the motion starts. */
export interface EndHead {
  node: number
  /** +1: the line lies towards greater x. */
  towards: 1 | -1
  K: number
  pull: number
  x: number
  /** Where it stands after tensioning, m: its movement counts from there. */
  measured: number
  stanchion: number
}

/** End heads next to a span that moves. */
export function endHeads(input: TimeFallInput, mesh: Mesh): EndHead[] {
  const heads: EndHead[] = []
  const n = mesh.headX.length - 1
  for (const [side, stanchion] of [0, n].entries()) {
    const span = side === 0 ? 0 : n - 1
    const node = mesh.headNode[stanchion]!
    if (span < mesh.from || span > mesh.to) continue
    heads.push({
      node,
      towards: side === 0 ? 1 : -1,
      K: input.model.endStiffness[side === 0 ? 0 : 1],
      pull: input.line.spans[span]!.H,
      x: mesh.headX[stanchion]!,
      measured: input.model.x[stanchion]!,
      stanchion,
    })
  }
  return heads
}

/** m u'' = pull of the rope - (pull at the start + K (u - u at the start)), u towards the line. */
export function pullHead(h: EndHead, m: Motion): void {
  const pull = h.pull + h.K * h.towards * (m.chain.mesh.nodes[4 * h.node]! - h.x)
  m.chain.force[2 * h.node]! -= h.towards * pull
  const at = m.chain.mesh.count - 1 + 2 * h.stanchion
  m.sums[at]! += pull
  m.sums[at + 1]! -= m.chain.force[2 * h.node + 1]!
}

/** What the rope on both sides pulls at a head that it is fixed to. */
export function noteHeld(h: { node: number; stanchion: number }, m: Motion): void {
  const at = m.chain.mesh.count - 1 + 2 * h.stanchion
  m.sums[at]! += m.chain.force[2 * h.node]!
  m.sums[at + 1]! -= m.chain.force[2 * h.node + 1]!
}
