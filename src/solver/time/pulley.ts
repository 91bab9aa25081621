/**
 * An ideal small pulley at a sliding stanchion. The element that lies over it has one tension on both sides,
 *
 *   length = |node before - pulley| + |pulley - node after|,
 *
 * so rope length is kept exactly and no friction can creep in. Rope that slips takes its nodes along: a node that
 * reaches the pulley is handed to the other side and the next element lies over it.
 *
 * Very near the pulley a node's sideways stiffness T/r grows beyond any step. There it is a bead: it keeps its distance
 * s from the pulley, on the straight line to its neighbour, and moves along that only. The zone is a fiftieth of an
 * element, so the momentum left out is nothing that can be seen in the energy balance.
 */

/** The bead zone, in elements. */
const ZONE = 0.02

/** One side of a pulley: the node there, once it is a bead, moves along t (unit vector away from the pulley). */
export interface Side {
  bead: boolean
  tx: number
  tz: number
  /** Distance of the node along t, m. */
  r: number
}

export interface Pulley {
  stanchion: number
  x: number
  z: number
  /** The element over the pulley, from node `element` to the next. */
  element: number
  /** Radius of the bead zone, m. */
  zone: number
  before: Side
  after: Side
}

const freshSide = (): Side => ({ bead: false, tx: 0, tz: 0, r: 0 })

export const freshPulley = (
  stanchion: number,
  x: number,
  z: number,
  element: number,
  rest: number,
): Pulley => ({
  stanchion,
  x,
  z,
  element,
  zone: ZONE * rest,
  before: freshSide(),
  after: freshSide(),
})

/**
 * Distance of a node from the pulley along its side, into side.r, with the unit vector away from the pulley. Results go
 * through fields here, not through return values, for numbers returned from calls in the inner loop are boxed.
 */
export function measureSide(p: Pulley, side: Side, nodes: Float64Array, node: number): void {
  const dx = nodes[4 * node]! - p.x
  const dz = nodes[4 * node + 1]! - p.z
  if (side.bead) {
    side.r = dx * side.tx + dz * side.tz
    return
  }
  const r = Math.sqrt(dx * dx + dz * dz)
  side.r = r
  side.tx = dx / r
  side.tz = dz / r
}

/** Unit vector from the pulley to a node, into `side`. */
function aim(p: Pulley, side: Side, nodes: Float64Array, node: number): void {
  const dx = nodes[4 * node]! - p.x
  const dz = nodes[4 * node + 1]! - p.z
  const r = Math.sqrt(dx * dx + dz * dz) || 1
  side.tx = dx / r
  side.tz = dz / r
}

/** Puts a node at distance s from the pulley on its side, with speed v along it. */
function place(p: Pulley, side: Side, nodes: Float64Array, node: number, s: number, v: number): void {
  nodes[4 * node] = p.x + s * side.tx
  nodes[4 * node + 1] = p.z + s * side.tz
  nodes[4 * node + 2] = v * side.tx
  nodes[4 * node + 3] = v * side.tz
}

/**
 * Keeps a bead on its line after a step, makes one of a node that has come into the zone, and says whether it has
 * reached the pulley (then how far past it is in `passed`). `next` is the neighbour away from the pulley.
 */
function settleSide(p: Pulley, side: Side, nodes: Float64Array, node: number, next: number): boolean {
  const dx = nodes[4 * node]! - p.x
  const dz = nodes[4 * node + 1]! - p.z
  if (!side.bead) aim(p, side, nodes, node)
  const s = dx * side.tx + dz * side.tz
  const v = nodes[4 * node + 2]! * side.tx + nodes[4 * node + 3]! * side.tz
  aim(p, side, nodes, next)
  side.bead = s <= p.zone
  if (s < 0) {
    passed.s = -s
    passed.v = -v
    return true
  }
  place(p, side, nodes, node, s, v)
  return false
}

/** Where the last node that reached a pulley has come to. */
const passed = { s: 0, v: 0 }

/** Whether a side has nothing to settle: its node is free and outside the zone. */
function isClear(p: Pulley, side: Side, nodes: Float64Array, node: number): boolean {
  const dx = nodes[4 * node]! - p.x
  const dz = nodes[4 * node + 1]! - p.z
  return !side.bead && dx * dx + dz * dz > p.zone * p.zone
}

/**
 * After a step: beads stay on their lines, nodes pass from one side to the other. `mayPass` is false for a node that
 * must stay on its side (a connector is tied to it, or it is an end): it stops at the pulley.
 * Returns true where the element over the pulley is another one now.
 */
export function settlePulley(p: Pulley, nodes: Float64Array, mayPass: (node: number) => boolean): boolean {
  const a = p.element
  const b = a + 1
  if (!isClear(p, p.after, nodes, b) && settleSide(p, p.after, nodes, b, b + 1)) {
    if (!mayPass(b)) return stopAt(p, p.after, nodes, b)
    pass(p, p.before, p.after, nodes, b, a)
    p.element = b
    return true
  }
  if (!isClear(p, p.before, nodes, a) && settleSide(p, p.before, nodes, a, a - 1)) {
    if (!mayPass(a)) return stopAt(p, p.before, nodes, a)
    pass(p, p.after, p.before, nodes, a, b)
    p.element = a - 1
    return true
  }
  return false
}

/** Hands `node` to the side `to`, on the line to `neighbour` there; the side it leaves gets a free node. */
function pass(p: Pulley, to: Side, from: Side, nodes: Float64Array, node: number, neighbour: number): void {
  aim(p, to, nodes, neighbour)
  place(p, to, nodes, node, passed.s, passed.v)
  to.bead = true
  from.bead = false
}

function stopAt(p: Pulley, side: Side, nodes: Float64Array, node: number): false {
  place(p, side, nodes, node, 0, 0)
  return false
}
