/** The elements that are no plain ones: over a pulley, in series with the line absorber, or both. */
import { absorb, type LineAbsorber, yieldForce } from './line-absorber'
import { measureSide, type Pulley } from './pulley'
import type { Motion } from './step'
import { ROPE_DAMPING } from './types'

/** An element with a pulley under it or the absorber in it, or both. */
export interface Link {
  element: number
  pulley: Pulley | null
  absorber: LineAbsorber | null
  k: number
  c: number
  rest: number
  /** Unit vectors of the pull on its two nodes. */
  ax: number
  az: number
  bx: number
  bz: number
  /** For the books: T less its elastic part, rate of length before the step, m/s. */
  q: number
  rate: number
  /** m, and its rate of change as last measured, m/s. */
  length: number
  rateNow: number
}

export function freshLink(
  EA: number,
  rest: number,
  element: number,
  pulley: Pulley | null,
  absorber: LineAbsorber | null,
): Link {
  const k = EA / rest
  const pull = { ax: 0, az: 0, bx: 0, bz: 0, q: 0, rate: 0, length: 0, rateNow: 0 }
  return { element, pulley, absorber, k, c: ROPE_DAMPING * k, rest, ...pull }
}

/** Length and its rate of change, into the link, with the directions of the pull on both nodes. */
function measureLink(l: Link, nodes: Float64Array): void {
  const a = 4 * l.element
  const p = l.pulley
  if (p) {
    measureSide(p, p.before, nodes, l.element)
    measureSide(p, p.after, nodes, l.element + 1)
    l.length = p.before.r + p.after.r
    l.ax = -p.before.tx
    l.az = -p.before.tz
    l.bx = -p.after.tx
    l.bz = -p.after.tz
  } else {
    const dx = nodes[a + 4]! - nodes[a]!
    const dz = nodes[a + 5]! - nodes[a + 1]!
    l.length = Math.sqrt(dx * dx + dz * dz)
    l.ax = dx / l.length
    l.az = dz / l.length
    l.bx = -l.ax
    l.bz = -l.az
  }
  measureRate(l, nodes)
}

/** Rate of change of its length with the directions as last measured. */
export function measureRate(l: Link, nodes: Float64Array): void {
  const a = 4 * l.element
  l.rateNow = -(l.ax * nodes[a + 2]! + l.az * nodes[a + 3]! + l.bx * nodes[a + 6]! + l.bz * nodes[a + 7]!)
}

/** Tension of a link in this step, on its nodes and on its stanchion. */
export function pullLink(l: Link, m: Motion): void {
  const { nodes } = m.chain.mesh
  measureLink(l, nodes)
  l.rate = l.rateNow
  let stretch = l.length - l.rest
  if (l.absorber) stretch -= l.absorber.extension - l.absorber.initial
  let T = l.k * stretch + l.c * l.rate
  if (l.absorber && T > yieldForce(l.absorber)) {
    const before = l.absorber.extension
    T = absorb(l.absorber, T, l.k + l.c / m.dt)
    const flowed = l.absorber.extension - before
    stretch -= flowed
    // The books take the mean of the rate before and after: this is the element's own rate, without the flow.
    l.rate -= (2 * flowed) / m.dt
  }
  if (T < 0) T = 0
  l.q = stretch > 0 ? T - l.k * stretch : T
  pullBy(l, T, m)
}

function pullBy(l: Link, T: number, m: Motion): void {
  const { force } = m.chain
  m.sums[l.element]! += T
  const a = 2 * l.element
  force[a]! += T * l.ax
  force[a + 1]! += T * l.az
  force[a + 2]! += T * l.bx
  force[a + 3]! += T * l.bz
  if (!l.pulley) return
  const at = m.chain.mesh.count - 1 + 2 * l.pulley.stanchion
  m.sums[at]! -= T * (l.ax + l.bx)
  m.sums[at + 1]! += T * (l.az + l.bz)
}
