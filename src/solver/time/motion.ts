/** Puts everything that moves together, at rest on the unloaded line. */
import { type Body, freshBody } from './body'
import { buildChain } from './chain'
import { endHeads } from './end-head'
import { BLOCK_TIME } from './means'
import { buildMesh, FIXED, FREE, type Mesh } from './mesh'
import { stableStep } from './stable-step'
import type { Motion } from './step'
import type { TimeFallInput, TimeFallOptions } from './types'

/** Part of the longest stable step that is taken: the rope's own stiffness sideways adds a little. */
const SAFE_PART = 0.92
/** Steps in a quarter of a millisecond where no rope asks for short ones. */
const FEWEST_STEPS = 8

export function startMotion(
  input: TimeFallInput,
  options: TimeFallOptions,
): { motion: Motion; stepsPerBlock: number } {
  const mesh = buildMesh(input, options)
  const longest = stableStep(input, mesh) * SAFE_PART * Math.min(options.step ?? 1, 1)
  const stepsPerBlock = Math.max(FEWEST_STEPS, Math.ceil(BLOCK_TIME / longest))
  const dt = BLOCK_TIME / stepsPerBlock
  const chain = buildChain(input, mesh, dt)
  const inTurn = input.order === 'in-turn'
  const bodies: Body[] = input.workers.map((w, i) => freshBody(w, mesh.ties[i]!, inTurn && i > 0))
  const tied = new Set(mesh.ties.map((t) => t.node))
  const motion: Motion = {
    chain,
    bodies,
    heads: endHeads(input, mesh),
    absorberElement: input.model.absorberAt === 'start' ? 0 : mesh.count - 2,
    dt,
    time: 0,
    steps: 0,
    sums: new Float64Array(mesh.count - 1 + 2 * mesh.headX.length),
    idle: idlePulls(input, mesh),
    lost: 0,
    mayPass: (n) => mesh.kind[n] === FREE && !tied.has(n),
    held: mesh.headNode.flatMap((node, stanchion) =>
      node >= 0 && mesh.kind[node] === FIXED ? [{ node, stanchion }] : [],
    ),
  }
  return { motion, stepsPerBlock }
}

/** Greatest tension at rest in the spans that stay as they are, N. */
export function idleTension(input: TimeFallInput, mesh: Mesh): number {
  const still = input.line.spans.filter((_, i) => i < mesh.from || i > mesh.to)
  return Math.max(
    0,
    ...still.map((s) => Math.hypot(s.H, Math.max(Math.abs(s.V), Math.abs(input.set.weight * s.L - s.V)))),
  )
}

/** Pull of the spans that stay as they are, along (towards greater x) and down of each head, N. */
function idlePulls(input: TimeFallInput, mesh: Mesh): Float64Array {
  const idle = new Float64Array(2 * mesh.headX.length)
  const last = mesh.headX.length - 1
  for (const [i, s] of input.line.spans.entries()) {
    if (i >= mesh.from && i <= mesh.to) continue
    idle[2 * i]! += s.H
    idle[2 * i + 1]! += s.V
    idle[2 * i + 2]! += i + 1 === last ? s.H : -s.H
    idle[2 * i + 3]! += input.set.weight * s.L - s.V
  }
  return idle
}
