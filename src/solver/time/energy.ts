/**
 * The books: kinetic, potential, elastic energy and what has been lost must add up to what was there at the start and
 * what bodies brought in. Velocities stand half a step off, so the kinetic energy at an instant is the mean of both
 * sides; the gap then stays bounded, as a symplectic motion's does.
 */
import { GRAVITY } from '../model'
import { bodyElastic } from './body'
import { FREE } from './mesh'
import type { Motion } from './step'
import type { Energies } from './types'

export interface Books {
  elasticAtStart: number
  potentialAtStart: number
  /** J */
  worstGap: number
  last: Energies
}

export function openBooks(m: Motion): Books {
  const elasticAtStart = elastic(m)
  return {
    elasticAtStart,
    potentialAtStart: ropePotential(m),
    worstGap: 0,
    last: { kinetic: kinetic(m), potential: 0, elastic: elasticAtStart, dissipated: 0 },
  }
}

/** Positions' share at this instant, and the kinetic energy half a step before it. */
export function halfEntry(m: Motion, books: Books): Energies {
  return {
    kinetic: kinetic(m),
    potential: ropePotential(m) - books.potentialAtStart + bodyPotential(m),
    elastic: elastic(m),
    dissipated: dissipated(m),
  }
}

/** Completes an entry one step later and notes the gap; not where a body has stepped off just between. */
export function closeEntry(m: Motion, books: Books, e: Energies, fallingBefore: number): void {
  if (falling(m) !== fallingBefore) return
  e.kinetic = (e.kinetic + kinetic(m)) / 2
  books.last = e
  const brought = m.bodies.reduce((sum, b) => sum + b.brought, 0)
  const gap = e.kinetic + e.potential + e.elastic + e.dissipated - books.elasticAtStart - brought
  books.worstGap = Math.max(books.worstGap, Math.abs(gap))
}

/** The greatest gap so far over the energy of the fall: what bodies brought in and lost in height. */
export function energyError(m: Motion, books: Books): number {
  const fall = m.bodies.reduce((sum, b) => sum + b.brought + b.worker.mass * GRAVITY * (b.from - b.lowest), 0)
  return fall > 0 ? books.worstGap / fall : 0
}

/** How many bodies are falling. */
export const falling = (m: Motion): number => m.bodies.filter((b) => b.state === 'falling').length

function kinetic(m: Motion): number {
  const { nodes, mass, pieces } = m.chain.mesh
  let twice = 0
  for (const p of pieces) {
    for (let i = p.first; i < p.last; i++)
      twice += mass[i]! * (nodes[4 * i + 2]! ** 2 + nodes[4 * i + 3]! ** 2)
  }
  const end = m.chain.mesh.count - 1
  twice += mass[end]! * nodes[4 * end + 2]! ** 2
  for (const b of m.bodies) if (b.state === 'falling') twice += b.worker.mass * (b.u * b.u + b.w * b.w)
  return twice / 2
}

function ropePotential(m: Motion): number {
  const { nodes, mass, kind, pieces } = m.chain.mesh
  let sum = 0
  for (const p of pieces) {
    for (let i = p.first; i < p.last; i++) if (kind[i] === FREE) sum += mass[i]! * nodes[4 * i + 1]!
  }
  return sum * GRAVITY
}

const bodyPotential = (m: Motion): number =>
  m.bodies.reduce((sum, b) => sum + (b.state === 'falling' ? b.worker.mass * GRAVITY * (b.z - b.from) : 0), 0)

/** Rope, head springs (as if linear from no pull) and connectors. */
function elastic(m: Motion): number {
  const { mesh, links, runs } = m.chain
  let sum = 0
  for (const r of runs) {
    const k = r.figures[0]!
    for (let e = r.first; e < r.last; e++) {
      const s = stretch(mesh.nodes, e) - r.figures[2]!
      if (s > 0) sum += (k * s * s) / 2
    }
  }
  for (const l of links) {
    const p = l.pulley
    const length = p
      ? fromPulley(mesh.nodes, l.element, p.x, p.z) + fromPulley(mesh.nodes, l.element + 1, p.x, p.z)
      : stretch(mesh.nodes, l.element)
    const s = length - l.rest - (l.absorber ? l.absorber.extension - l.absorber.initial : 0)
    if (s > 0) sum += (l.k * s * s) / 2
  }
  for (const h of m.heads)
    sum += (h.pull + h.K * h.towards * (mesh.nodes[4 * h.node]! - h.x)) ** 2 / (2 * h.K)
  for (const b of m.bodies) sum += bodyElastic(b, mesh)
  return sum
}

/** Distance between the ends of element e, m (Math.hypot is many times slower). */
function stretch(n: Float64Array, e: number): number {
  const dx = n[4 * e + 4]! - n[4 * e]!
  const dz = n[4 * e + 5]! - n[4 * e + 1]!
  return Math.sqrt(dx * dx + dz * dz)
}

function fromPulley(n: Float64Array, i: number, x: number, z: number): number {
  const dx = n[4 * i]! - x
  const dz = n[4 * i + 1]! - z
  return Math.sqrt(dx * dx + dz * dz)
}

function dissipated(m: Motion): number {
  let sum = m.lost + (m.chain.absorber?.lost ?? 0)
  for (const b of m.bodies) sum += b.connector.lost
  return sum
}
