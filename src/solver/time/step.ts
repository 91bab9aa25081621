/** One explicit step of everything that moves: rope, pulleys, absorber, end heads, bodies. */
import { GRAVITY } from '../model'
import { type Body, stepBody } from './body'
import { type Chain, relink } from './chain'
import { type EndHead, noteHeld, pullHead } from './end-head'
import { sweep, sweepBooked } from './kernel'
import { pullLink } from './link'
import { bookLoss } from './loss'
import { FIXED, HEAD } from './mesh'
import { settlePulley } from './pulley'

export interface Motion {
  chain: Chain
  bodies: Body[]
  heads: EndHead[]
  absorberElement: number
  dt: number
  time: number
  steps: number
  /** Sums over steps: tension of each element, then along and down of each head. */
  sums: Float64Array
  /** Constant pull of spans that do not move, along and down of each head, N. */
  idle: Float64Array
  /** J lost in the rope's damping and in drag. */
  lost: number
  /** Whether a node may pass a pulley: free, and no connector tied to it. */
  mayPass: (node: number) => boolean
  /** Fixed nodes and the heads that they stand at. */
  held: { node: number; stanchion: number }[]
}

/** Steps between two entries of the rope's loss: it varies slowly, summed over the rope. */
export const BOOK_EVERY = 5

export function step(m: Motion): void {
  const book = m.steps % BOOK_EVERY === 0
  const { chain } = m
  clearForces(chain)
  for (const b of m.bodies) stepBody(b, m)
  sweepRuns(m, book)
  for (const l of chain.links) pullLink(l, m)
  for (const h of m.heads) pullHead(h, m)
  for (const h of m.held) noteHeld(h, m)
  for (let i = 0; i < chain.ends.length; i++) moveEnd(m, chain.ends[i]!)
  if (book) m.lost += bookLoss(m)
  settlePulleys(m)
  m.time += m.dt
  m.steps++
}

function clearForces(chain: Chain): void {
  const { ends, force } = chain
  for (let i = 0; i < ends.length; i++) {
    const n = 2 * ends[i]!
    force[n] = 0
    force[n + 1] = 0
  }
}

function sweepRuns(m: Motion, book: boolean): void {
  const { chain } = m
  const { nodes } = chain.mesh
  const { force } = chain
  for (const r of chain.runs) {
    if (book) sweepBooked(nodes, m.sums, r.first, r.last, r.figures, r.out)
    else sweep(nodes, m.sums, r.first, r.last, r.figures, r.out)
    force[2 * r.first]! += r.out[0]!
    force[2 * r.first + 1]! += r.out[1]!
    force[2 * r.last]! -= r.out[2]!
    force[2 * r.last + 1]! -= r.out[3]!
  }
}

function moveEnd(m: Motion, n: number): void {
  const { nodes, mass, kind } = m.chain.mesh
  const { force } = m.chain
  if (kind[n] === FIXED) return
  const i = 4 * n
  const u = nodes[i + 2]! + (m.dt * force[2 * n]!) / mass[n]!
  nodes[i + 2] = u
  nodes[i] = nodes[i]! + m.dt * u
  if (kind[n] === HEAD) return
  const w = nodes[i + 3]! + m.dt * (force[2 * n + 1]! / mass[n]! - GRAVITY)
  nodes[i + 3] = w
  nodes[i + 1] = nodes[i + 1]! + m.dt * w
}

function settlePulleys(m: Motion): void {
  const { pulleys, mesh } = m.chain
  let passed = false
  for (const p of pulleys) if (settlePulley(p, mesh.nodes, m.mayPass)) passed = true
  if (passed) relink(m.chain, m.absorberElement)
}
