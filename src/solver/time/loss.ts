/** What the rope's damping takes, from what the kernel leaves for the books. */
import { measureRate } from './link'
import { BOOK_EVERY, type Motion } from './step'

/** J lost in the rope since the last entry: q (rate before + rate after) / 2 of every element. */
export function bookLoss(m: Motion): number {
  const { nodes } = m.chain.mesh
  let twice = 0
  for (const r of m.chain.runs) {
    twice += r.out[4]!
    twice += edgeLoss(r.out, 9, nodes, r.last - 1)
    if (r.last - r.first > 1) twice += edgeLoss(r.out, 5, nodes, r.first)
  }
  for (const l of m.chain.links) {
    measureRate(l, nodes)
    twice += l.q * (l.rate + l.rateNow)
  }
  return (twice / 2) * m.dt * BOOK_EVERY
}

function edgeLoss(out: Float64Array, at: number, nodes: Float64Array, element: number): number {
  const a = 4 * element
  const after =
    (nodes[a + 6]! - nodes[a + 2]!) * out[at + 1]! + (nodes[a + 7]! - nodes[a + 3]!) * out[at + 2]!
  return out[at]! * (out[at + 3]! + after)
}
