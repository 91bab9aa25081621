/**
 * A falling body: a point mass at the D-ring on its connector. Whoever falls first starts at the connector's full
 * length below the unloaded line with v = sqrt(2 g h) (mechanics section 5). Whoever falls later stands until then,
 * and falls freely until the connector, tied to a line that moves, comes taut.
 */

import { freeFall } from '../fall-energy'
import { GRAVITY } from '../model'
import { type ConnectorState, connectorEnergy, freshConnector, pullConnector } from './connector'
import type { Mesh } from './mesh'
import type { Motion } from './step'
import type { Tie } from './tie'
import type { TimeWorker } from './types'

export interface Body {
  worker: TimeWorker
  tie: Tie
  connector: ConnectorState
  /** Elevation of the unloaded line at the tie, m. */
  lineZ: number
  /** Where the D-ring stands before the fall, m. */
  standing: number
  x: number
  z: number
  u: number
  w: number
  state: 'standing' | 'falling'
  /**
   * Whether the connector can act: from the moment on that its ends are within its length. A body that is said to
   * stand farther above the line than its connector reaches falls freely past the line first (h as in section 4).
   */
  engaged: boolean
  /** When the body steps off, s; Infinity: when its turn comes. */
  stepsOff: number
  /** Fallen until the connector first came taut, m; null until then. */
  freeFall: number | null
  /** Motion brought in at the start, J, and elevation from which potential counts, m. */
  brought: number
  from: number
  arrestForce: number
  extension: number
  lowest: number
  lowestAt: number
  ropeLowest: number
  pulledOff: boolean
}

/** Rounding allowed where a body hangs on a taut connector from the start, m. */
const REACH = 1e-6

/** Locked length of the connector with its tie at elevation z: a retractable pays out to the D-ring first. */
const lockLength = (w: TimeWorker, z: number): number =>
  w.type === 'lanyard' ? w.length : w.length + Math.max(0, z - (w.surface + w.dRingHeight))

export function freshBody(worker: TimeWorker, tie: Tie, inTurn: boolean): Body {
  const h = freeFall(worker.type, worker.length, worker.dRingHeight, tie.z - worker.surface)
  const length = lockLength(worker, tie.z)
  const late = inTurn || (worker.delay ?? 0) > 0
  const standing = tie.z - length + h
  return {
    worker,
    tie,
    connector: freshConnector(worker.connector, length),
    lineZ: tie.z,
    standing,
    x: tie.x,
    z: standing,
    u: 0,
    w: 0,
    state: 'standing',
    engaged: Math.abs(standing - tie.z) <= length + REACH,
    stepsOff: inTurn ? Number.POSITIVE_INFINITY : (worker.delay ?? 0) - Math.sqrt((2 * h) / GRAVITY),
    freeFall: late ? null : h,
    brought: 0,
    from: standing,
    arrestForce: 0,
    extension: 0,
    lowest: standing,
    lowestAt: 0,
    ropeLowest: tie.z,
    pulledOff: false,
  }
}

const tieX = (b: Body, mesh: Mesh): number => (b.tie.node < 0 ? b.tie.x : mesh.nodes[4 * b.tie.node]!)
const tieZ = (b: Body, mesh: Mesh): number => (b.tie.node < 0 ? b.tie.z : mesh.nodes[4 * b.tie.node + 1]!)

/** J stored in a body's connector. */
export const bodyElastic = (b: Body, mesh: Mesh): number =>
  b.state === 'falling' && b.engaged
    ? connectorEnergy(b.connector, Math.hypot(b.x - tieX(b, mesh), b.z - tieZ(b, mesh)))
    : 0

/** Starts a body that has been falling freely for `since` seconds at the time of the motion. */
function letGo(b: Body, m: Motion, since: number): void {
  b.connector.length = lockLength(b.worker, tieZ(b, m.chain.mesh))
  b.w = -GRAVITY * since
  b.z = b.standing - (GRAVITY * since * since) / 2
  b.from = b.z
  b.brought = (b.worker.mass * b.w * b.w) / 2
  b.w += (GRAVITY * m.dt) / 2
  b.state = 'falling'
}

/** Lets a body fall whose turn it is: taut below the line as it hangs now, with the speed of its free fall. */
export function takeTurn(b: Body, m: Motion): void {
  const z = tieZ(b, m.chain.mesh)
  b.x = tieX(b, m.chain.mesh)
  const taut = z - lockLength(b.worker, z)
  const h = Math.max(0, b.standing - taut)
  b.standing = taut + h
  letGo(b, m, Math.sqrt((2 * h) / GRAVITY))
  b.lowest = b.z
}

/** A step of one body, with its connector's force on the rope or on the stanchion. */
export function stepBody(b: Body, m: Motion): void {
  const { mesh, force } = m.chain
  const x = tieX(b, mesh)
  const z = tieZ(b, mesh)
  if (b.state === 'standing' && !leaves(b, m, x, z)) return
  const dx = b.x - x
  const dz = b.z - z
  const distance = Math.sqrt(dx * dx + dz * dz) || 1e-9
  if (!b.engaged && distance <= b.connector.length + REACH) b.engaged = true
  const F = b.engaged ? pullConnector(b.connector, distance) : 0
  const fx = (F * dx) / distance
  const fz = (F * dz) / distance
  if (b.tie.node >= 0) {
    force[2 * b.tie.node]! += fx
    force[2 * b.tie.node + 1]! += fz
  } else {
    const at = mesh.count - 1 + 2 * b.tie.stanchion
    m.sums[at]! += fx
    m.sums[at + 1]! -= fz
  }
  b.u -= (m.dt * fx) / b.worker.mass
  b.w -= m.dt * (fz / b.worker.mass + GRAVITY)
  note(b, F, z, m.time)
  b.x += m.dt * b.u
  b.z += m.dt * b.w
}

/** Whether a standing body falls from now on: it steps off, or the line drags it off by a taut lanyard. */
function leaves(b: Body, m: Motion, x: number, z: number): boolean {
  if (m.time >= b.stepsOff) {
    letGo(b, m, m.time - b.stepsOff)
    return true
  }
  const reach = Math.hypot(b.x - x, b.z - z)
  if (b.worker.type !== 'lanyard' || !b.engaged || reach <= b.worker.length + REACH) return false
  b.pulledOff = true
  letGo(b, m, 0)
  return true
}

function note(b: Body, F: number, ropeZ: number, time: number): void {
  if (F > 0 && b.freeFall === null) b.freeFall = b.standing - b.z - b.connector.extension
  if (F > b.arrestForce) b.arrestForce = F
  if (F > 0 && b.connector.extension > b.extension) b.extension = b.connector.extension
  if (ropeZ < b.ropeLowest) b.ropeLowest = ropeZ
  if (b.z < b.lowest) {
    b.lowest = b.z
    b.lowestAt = time
  }
}
