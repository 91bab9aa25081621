/**
 * Drag against the motion itself: not physics, but a way to the line at rest. The rope's own damping leaves a body
 * swinging up and down for minutes.
 */
import { GRAVITY } from '../model'
import type { Motion } from './step'

/** On the rope on its way to rest, 1/s: its waves die out within a swing of the bodies. */
export const RESTING_DRAG = 12

/** At rest: no body faster than this, m/s, its pull within this part of its weight, for this long, s. */
const STILL = { speed: 2e-3, part: 5e-3, time: 0.1 }

/**
 * Takes a part of all velocity away and books what that takes.
 * @param rope what stays of the rope's velocity, 0..1; @param bodies of the bodies'
 */
export function slow(m: Motion, rope: number, bodies: number): void {
  const { nodes, mass, count } = m.chain.mesh
  let twice = 0
  for (let i = 0; i < count; i++) {
    const u = nodes[4 * i + 2]!
    const w = nodes[4 * i + 3]!
    twice += mass[i]! * (u * u + w * w) * (1 - rope * rope)
    nodes[4 * i + 2] = u * rope
    nodes[4 * i + 3] = w * rope
  }
  for (const b of m.bodies) {
    if (b.state !== 'falling') continue
    twice += b.worker.mass * (b.u * b.u + b.w * b.w) * (1 - bodies * bodies)
    b.u *= bodies
    b.w *= bodies
  }
  m.lost += twice / 2
}

/**
 * Stops everything whenever the bodies are at their fastest, which is where forces balance: each stop leaves a smaller
 * swing, whatever its period (kinetic damping, as in dynamic relaxation of cable nets). Call once a block.
 */
export function stopAtFastest(m: Motion): () => void {
  let before = 0
  return () => {
    let now = 0
    for (const b of m.bodies) if (b.state === 'falling') now += b.worker.mass * (b.u * b.u + b.w * b.w)
    if (now < before) slow(m, 0, 0)
    before = now < before ? 0 : now
  }
}

function isStill(m: Motion): boolean {
  return m.bodies.every((b) => {
    if (b.state === 'standing') return true
    const weight = b.worker.mass * GRAVITY
    return Math.hypot(b.u, b.w) < STILL.speed && Math.abs(b.connector.force - weight) < STILL.part * weight
  })
}

/** Watches for rest: says true once everything has been still for long enough. */
export function restWatch(m: Motion): () => boolean {
  let since = m.time
  return () => {
    if (!isStill(m)) since = m.time
    return m.time - since >= STILL.time
  }
}
