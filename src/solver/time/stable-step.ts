/** How long a step may be. */
import { FIXED, HEAD, type Mesh } from './mesh'
import { ROPE_DAMPING, type TimeFallInput } from './types'

/** The longest step, s, at which the explicit motion stays stable: (2/w) (sqrt(1 + z^2) - z), z = beta w / 2. */
export function stableStep(input: TimeFallInput, mesh: Mesh): number {
  const EA = input.set.stiffness
  let most = 0
  for (const piece of mesh.pieces) {
    for (let i = piece.first; i <= piece.last; i++) {
      if (mesh.kind[i] === FIXED) continue
      const before = i > 0 ? EA / mesh.rest[i - 1]! : 0
      const after = i < mesh.count - 1 ? EA / mesh.rest[i]! : 0
      most = Math.max(most, (2 * (before + after) + pullOn(input, mesh, i)) / mesh.mass[i]!)
    }
  }
  const body = Math.max(0, ...input.workers.map((w) => (4 * w.connector.stiffness) / w.mass))
  const w = Math.sqrt(Math.max(most, body))
  const z = (ROPE_DAMPING * w) / 2
  return (2 / w) * (Math.sqrt(1 + z * z) - z)
}

/** Twice the stiffness of what else pulls on a node: connectors, the spring of an end head. */
function pullOn(input: TimeFallInput, mesh: Mesh, node: number): number {
  let k = 0
  for (const [i, tie] of mesh.ties.entries())
    if (tie.node === node) k += input.workers[i]!.connector.stiffness
  if (mesh.kind[node] === HEAD) k += input.model.endStiffness[node === 0 ? 0 : 1]
  return 2 * k
}
