/**
 * Drag against the motion itself: not physics, but a way to the line at rest. The rope's own damping leaves a body
 * swinging up and down for minutes.
 */
import { GRAVITY } from '../model'
import type { Motion } from './step'

/** Near critical for bodies that swing about once a second, 1/s. */
export const RESTING_DRAG = 12

/** At rest: no body faster than this, m/s, its pull within this part of its weight, for this long, s. */
const STILL = { speed: 2e-3, part: 5e-3, time: 0.1 }

/** Takes a part of all velocity away and books what that takes. */
export function slow(m: Motion, keep: number): void {
  const { nodes, mass, count } = m.chain.mesh
  let twice = 0
  for (let i = 0; i < count; i++) {
    const u = nodes[4 * i + 2]!
    const w = nodes[4 * i + 3]!
    twice += mass[i]! * (u * u + w * w)
    nodes[4 * i + 2] = u * keep
    nodes[4 * i + 3] = w * keep
  }
  for (const b of m.bodies) {
    if (b.state !== 'falling') continue
    twice += b.worker.mass * (b.u * b.u + b.w * b.w)
    b.u *= keep
    b.w *= keep
  }
  m.lost += (twice / 2) * (1 - keep * keep)
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
