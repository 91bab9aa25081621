/**
 * The moving chain: runs of equal elements for the kernel, and between them the links that are no plain elements (over
 * a pulley, in series with the line absorber) and the nodes that runs end at.
 */

import { GRAVITY } from '../model'
import { OUT, type RunFigures } from './kernel'
import { type LineAbsorber, lineAbsorber } from './line-absorber'
import { FIXED, HEAD, type Mesh } from './mesh'
import { freshPulley, type Pulley } from './pulley'
import { ROPE_DAMPING, type TimeFallInput } from './types'

export interface Run {
  first: number
  last: number
  figures: RunFigures
  out: Float64Array
}

/** An element with a pulley under it or the absorber in it, or both. */
export interface Link {
  element: number
  pulley: Pulley | null
  absorber: LineAbsorber | null
  k: number
  c: number
  rest: number
  /** Unit vectors of the pull on its two nodes. */
  ax: number
  az: number
  bx: number
  bz: number
  /** For the books: T less its elastic part, rate of length before the step, m/s. */
  q: number
  rate: number
  /** m, and its rate of change as last measured, m/s. */
  length: number
  rateNow: number
}

export interface Chain {
  mesh: Mesh
  pulleys: Pulley[]
  absorber: LineAbsorber | null
  /** Extension of an absorber whose span does not move, m. */
  absorberAtRest: number
  runs: Run[]
  links: Link[]
  /** Nodes that are moved one by one. */
  ends: Int32Array
  /** Force on these, x and z of node i at 2 i, N. */
  force: Float64Array
  /** Figures for the kernel, one set per piece. */
  figures: RunFigures[]
  EA: number
}

export function buildChain(input: TimeFallInput, mesh: Mesh, dt: number): Chain {
  const EA = input.set.stiffness
  const chain: Chain = {
    mesh,
    pulleys: input.grip === 'sliding' && mesh.pieces.length > 0 ? layPulleys(mesh) : [],
    absorber: movingAbsorber(input, mesh),
    absorberAtRest: input.line.absorberExtension,
    runs: [],
    links: [],
    ends: new Int32Array(0),
    force: new Float64Array(2 * mesh.count),
    figures: mesh.pieces.map((p) => {
      const k = EA / p.rest
      const mass = p.rest * input.model.massPerMetre
      return new Float64Array([k, ROPE_DAMPING * k, p.rest, dt / mass, GRAVITY * dt, dt])
    }),
    EA,
  }
  relink(chain, absorberElement(input, mesh))
  return chain
}

/** The absorber acts only where its end span moves. */
function movingAbsorber(input: TimeFallInput, mesh: Mesh): LineAbsorber | null {
  const span = input.model.absorberAt === 'start' ? 0 : input.line.spans.length - 1
  const moves = span >= mesh.from && span <= mesh.to
  return moves ? lineAbsorber(input.set.absorber, input.line.absorberExtension) : null
}

const absorberElement = (input: TimeFallInput, mesh: Mesh): number =>
  input.model.absorberAt === 'start' ? 0 : mesh.count - 2

/** Each pulley under the element that its stretch of rope lies in. */
function layPulleys(mesh: Mesh): Pulley[] {
  const pulleys: Pulley[] = []
  let element = 0
  let to = mesh.rest[0]!
  for (let j = 1; j < mesh.headX.length - 1; j++) {
    while (to < mesh.ropeTo[j]! - 1e-12) to += mesh.rest[++element]!
    pulleys.push(freshPulley(j, mesh.headX[j]!, mesh.headZ[j]!, element, mesh.rest[element]!))
  }
  return pulleys
}

/** Sorts out runs, links and ends again, after a node has passed a pulley. */
export function relink(chain: Chain, absorberAt: number): void {
  const { mesh } = chain
  const links = new Map<number, Link>()
  for (const pulley of chain.pulleys)
    links.set(pulley.element, freshLink(chain, pulley.element, pulley, null))
  if (chain.absorber) {
    const over = links.get(absorberAt)?.pulley ?? null
    links.set(absorberAt, freshLink(chain, absorberAt, over, chain.absorber))
  }
  chain.links = [...links.values()]
  chain.runs = mesh.pieces.flatMap((piece, i) =>
    cutRuns(piece.first, piece.last, links).map(([first, last]) => ({
      first,
      last,
      figures: chain.figures[i]!,
      out: new Float64Array(OUT.size),
    })),
  )
  const ends = new Set<number>()
  for (const r of chain.runs) ends.add(r.first).add(r.last)
  for (const l of chain.links) ends.add(l.element).add(l.element + 1)
  chain.ends = Int32Array.from([...ends].sort((a, b) => a - b))
}

/** Runs of plain elements between `first` and `last`, links left out. */
function cutRuns(first: number, last: number, links: Map<number, Link>): [number, number][] {
  const runs: [number, number][] = []
  let from = first
  for (let e = first; e < last; e++) {
    if (!links.has(e)) continue
    if (e > from) runs.push([from, e])
    from = e + 1
  }
  if (last > from) runs.push([from, last])
  return runs
}

function freshLink(
  chain: Chain,
  element: number,
  pulley: Pulley | null,
  absorber: LineAbsorber | null,
): Link {
  const rest = chain.mesh.rest[element]!
  const k = chain.EA / rest
  const c = ROPE_DAMPING * k
  return {
    element,
    pulley,
    absorber,
    k,
    c,
    rest,
    ax: 0,
    az: 0,
    bx: 0,
    bz: 0,
    q: 0,
    rate: 0,
    length: 0,
    rateNow: 0,
  }
}

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
