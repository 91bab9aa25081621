/** One explicit step of everything that moves: rope, pulleys, absorber, end heads, bodies. */
import { GRAVITY } from '../model'
import type { Body } from './body'
import { stepBody } from './body'
import { type Chain, type Link, relink } from './chain'
import { sweep, sweepBooked } from './kernel'
import { absorb, yieldForce } from './line-absorber'
import { FIXED, HEAD } from './mesh'
import { measureSide, settlePulley } from './pulley'

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

/** m u'' = pull of the rope - (pull at the start + K (u - u at the start)), u towards the line. */
function pullHead(h: EndHead, m: Motion): void {
  const pull = h.pull + h.K * h.towards * (m.chain.mesh.nodes[4 * h.node]! - h.x)
  m.chain.force[2 * h.node]! -= h.towards * pull
  const at = m.chain.mesh.count - 1 + 2 * h.stanchion
  m.sums[at]! += pull
  m.sums[at + 1]! -= m.chain.force[2 * h.node + 1]!
}

/** What the rope on both sides pulls at a head that it is fixed to. */
function noteHeld(h: { node: number; stanchion: number }, m: Motion): void {
  const at = m.chain.mesh.count - 1 + 2 * h.stanchion
  m.sums[at]! += m.chain.force[2 * h.node]!
  m.sums[at + 1]! -= m.chain.force[2 * h.node + 1]!
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

function measureRate(l: Link, nodes: Float64Array): void {
  const a = 4 * l.element
  l.rateNow = -(l.ax * nodes[a + 2]! + l.az * nodes[a + 3]! + l.bx * nodes[a + 6]! + l.bz * nodes[a + 7]!)
}

function pullLink(l: Link, m: Motion): void {
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

/** Puts a link's tension on its nodes and on its stanchion. */
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

/** J lost in the rope since the last entry: q (rate before + rate after) / 2 of every element. */
function bookLoss(m: Motion): number {
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

function settlePulleys(m: Motion): void {
  const { pulleys, mesh } = m.chain
  let passed = false
  for (const p of pulleys) if (settlePulley(p, mesh.nodes, m.mayPass)) passed = true
  if (passed) relink(m.chain, m.absorberElement)
}
