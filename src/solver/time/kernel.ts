/**
 * The inner loop: one explicit step of a run of equal elements. Longer than other functions on purpose: one pass over
 * the nodes, everything in registers, is what makes it as fast as compiled C.
 *
 * Nodes stand interleaved as x, z, u, w (position, velocity half a step behind). Symplectic (central difference):
 *
 *   T = k (l - l0) + c dl/dt, never below zero;  v += dt F/m;  x += dt v;     k = EA/l0, c = beta k
 *
 * The run's end nodes are left alone: the forces of the first and last element on them go out. A node is moved as soon
 * as both its elements are known; its old place is kept in locals for the next element.
 */

/** Figures of a run: [k, c, l0, dt/m, g dt, dt]. */
export type RunFigures = Float64Array

/** Where the outgoing figures of a run stand. */
export const OUT = { firstX: 0, firstZ: 1, lastX: 2, lastZ: 3, lost: 4, first: 5, last: 9, size: 13 }

/** A step of elements a to b - 1; adds each tension to `sum`. Forces out: of the element on its first node. */
export function sweep(
  nodes: Float64Array,
  sum: Float64Array,
  a: number,
  b: number,
  run: RunFigures,
  out: Float64Array,
): void {
  const k = run[0]!
  const c = run[1]!
  const l0 = run[2]!
  const perMass = run[3]!
  const fall = run[4]!
  const dt = run[5]!
  let i = 4 * a
  let x0 = nodes[i]!
  let z0 = nodes[i + 1]!
  let u0 = nodes[i + 2]!
  let w0 = nodes[i + 3]!
  let fx0 = 0
  let fz0 = 0
  for (let e = a; e < b; e++) {
    i += 4
    const x1 = nodes[i]!
    const z1 = nodes[i + 1]!
    const u1 = nodes[i + 2]!
    const w1 = nodes[i + 3]!
    const dx = x1 - x0
    const dz = z1 - z0
    const l = Math.sqrt(dx * dx + dz * dz + 1e-30)
    const per = 1 / l
    const tx = dx * per
    const tz = dz * per
    let T = k * (l - l0) + c * ((u1 - u0) * tx + (w1 - w0) * tz)
    if (T < 0) T = 0
    sum[e] = sum[e]! + T
    const fx = T * tx
    const fz = T * tz
    if (e > a) {
      const u = u0 + perMass * (fx - fx0)
      const w = w0 + perMass * (fz - fz0) - fall
      nodes[i - 4] = x0 + dt * u
      nodes[i - 3] = z0 + dt * w
      nodes[i - 2] = u
      nodes[i - 1] = w
    } else {
      out[0] = fx
      out[1] = fz
    }
    fx0 = fx
    fz0 = fz
    x0 = x1
    z0 = z1
    u0 = u1
    w0 = w1
  }
  out[2] = fx0
  out[3] = fz0
}

/**
 * The same step, and what the rope's damping takes: q (rate before + rate after) / 2 with q = T - elastic part, which
 * is the exact loss of the discrete motion. Twice that power, inner elements only, in out[4]; the first and last
 * element's q, direction and rate before in out[5..8] and out[9..12], for their end nodes have not moved yet.
 */
export function sweepBooked(
  nodes: Float64Array,
  sum: Float64Array,
  a: number,
  b: number,
  run: RunFigures,
  out: Float64Array,
): void {
  const k = run[0]!
  const c = run[1]!
  const l0 = run[2]!
  const perMass = run[3]!
  const fall = run[4]!
  const dt = run[5]!
  let i = 4 * a
  let x0 = nodes[i]!
  let z0 = nodes[i + 1]!
  let u0 = nodes[i + 2]!
  let w0 = nodes[i + 3]!
  let fx0 = 0
  let fz0 = 0
  let q0 = 0
  let tx0 = 0
  let tz0 = 0
  let rate0 = 0
  let uBefore = 0
  let wBefore = 0
  let lost = 0
  for (let e = a; e < b; e++) {
    i += 4
    const x1 = nodes[i]!
    const z1 = nodes[i + 1]!
    const u1 = nodes[i + 2]!
    const w1 = nodes[i + 3]!
    const dx = x1 - x0
    const dz = z1 - z0
    const l = Math.sqrt(dx * dx + dz * dz + 1e-30)
    const per = 1 / l
    const tx = dx * per
    const tz = dz * per
    const rate = (u1 - u0) * tx + (w1 - w0) * tz
    const elastic = l > l0 ? k * (l - l0) : 0
    let T = k * (l - l0) + c * rate
    if (T < 0) T = 0
    sum[e] = sum[e]! + T
    const fx = T * tx
    const fz = T * tz
    if (e > a) {
      const u = u0 + perMass * (fx - fx0)
      const w = w0 + perMass * (fz - fz0) - fall
      nodes[i - 4] = x0 + dt * u
      nodes[i - 3] = z0 + dt * w
      nodes[i - 2] = u
      nodes[i - 1] = w
      if (e > a + 1) lost += q0 * (rate0 + (u - uBefore) * tx0 + (w - wBefore) * tz0)
      uBefore = u
      wBefore = w
    } else {
      out[0] = fx
      out[1] = fz
      out[5] = T - elastic
      out[6] = tx
      out[7] = tz
      out[8] = rate
    }
    q0 = T - elastic
    tx0 = tx
    tz0 = tz
    rate0 = rate
    fx0 = fx
    fz0 = fz
    x0 = x1
    z0 = z1
    u0 = u1
    w0 = w1
  }
  out[2] = fx0
  out[3] = fz0
  out[4] = lost
  out[9] = q0
  out[10] = tx0
  out[11] = tz0
  out[12] = rate0
}
