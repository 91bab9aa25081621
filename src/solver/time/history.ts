/** Takes the pictures of a motion at even times into arrays that grow by doubling. */
import type { Means } from './means'
import type { Motion } from './step'
import type { Energies, FallHistory } from './types'

function stillTension(m: Motion): Float64Array {
  const { nodes, rest, pieces } = m.chain.mesh
  const tension = Float64Array.from(rest, (l0, e) => {
    const l = Math.hypot(nodes[4 * e + 4]! - nodes[4 * e]!, nodes[4 * e + 5]! - nodes[4 * e + 1]!)
    return m.chain.EA * Math.max(0, l / l0 - 1)
  })
  for (const p of pieces) tension.fill(0, p.first, p.last)
  return tension
}

export class HistoryTaker {
  private frames = 0
  private room = 256
  private readonly nodes: number
  private readonly bodies: number
  /** Tension of elements in spans that do not move, N; 0 in the others. */
  private readonly still: Float64Array
  private arrays: Omit<FallHistory, 'frames' | 'nodes' | 'workers' | 'attachedNode'>

  constructor(private readonly motion: Motion) {
    this.nodes = motion.chain.mesh.count
    this.bodies = motion.bodies.length
    this.arrays = this.makeRoom(this.room)
    this.still = stillTension(motion)
  }

  private makeRoom(frames: number): HistoryTaker['arrays'] {
    const { nodes, bodies } = this
    return {
      times: new Float64Array(frames),
      x: new Float32Array(frames * nodes),
      z: new Float32Array(frames * nodes),
      tension: new Float32Array(frames * (nodes - 1)),
      workerX: new Float32Array(frames * bodies),
      workerZ: new Float32Array(frames * bodies),
      connectorForce: new Float32Array(frames * bodies),
      connectorExtension: new Float32Array(frames * bodies),
      headShift: new Float32Array(frames * 2),
      absorberExtension: new Float32Array(frames),
      energies: new Float64Array(frames * 4),
    }
  }

  private grow(): void {
    this.room *= 2
    const larger = this.makeRoom(this.room)
    for (const [key, old] of Object.entries(this.arrays)) {
      ;(larger[key as keyof HistoryTaker['arrays']] as Float64Array).set(old as Float64Array)
    }
    this.arrays = larger
  }

  take(means: Means, energies: Energies): void {
    if (this.frames === this.room) this.grow()
    const { arrays: a, motion: m, frames: f, nodes: n } = this
    a.times[f] = m.time
    const at = m.chain.mesh.nodes
    for (let i = 0; i < n; i++) {
      a.x[f * n + i] = at[4 * i]!
      a.z[f * n + i] = at[4 * i + 1]!
    }
    for (let e = 0; e < n - 1; e++) a.tension[f * (n - 1) + e] = means.mean[e]! + this.still[e]!
    this.takeBodies(f)
    for (const h of m.heads)
      a.headShift[2 * f + (h.towards > 0 ? 0 : 1)] = h.towards * (at[4 * h.node]! - h.measured)
    a.absorberExtension[f] = m.chain.absorber?.extension ?? m.chain.absorberAtRest
    a.energies.set([energies.kinetic, energies.potential, energies.elastic, energies.dissipated], 4 * f)
    this.frames++
  }

  private takeBodies(f: number): void {
    const { arrays: a, bodies } = this
    for (const [i, b] of this.motion.bodies.entries()) {
      a.workerX[f * bodies + i] = b.x
      a.workerZ[f * bodies + i] = b.z
      a.connectorForce[f * bodies + i] = b.connector.force
      a.connectorExtension[f * bodies + i] = b.connector.extension
    }
  }

  finish(): FallHistory {
    const { frames, nodes, bodies, arrays: a } = this
    return {
      frames,
      nodes,
      workers: bodies,
      times: a.times.slice(0, frames),
      x: a.x.slice(0, frames * nodes),
      z: a.z.slice(0, frames * nodes),
      tension: a.tension.slice(0, frames * (nodes - 1)),
      workerX: a.workerX.slice(0, frames * bodies),
      workerZ: a.workerZ.slice(0, frames * bodies),
      connectorForce: a.connectorForce.slice(0, frames * bodies),
      connectorExtension: a.connectorExtension.slice(0, frames * bodies),
      headShift: a.headShift.slice(0, frames * 2),
      absorberExtension: a.absorberExtension.slice(0, frames),
      energies: a.energies.slice(0, frames * 4),
      attachedNode: Int32Array.from(this.motion.bodies, (b) => b.tie.node),
    }
  }
}
