/**
 * The moving chain: runs of equal elements for the kernel, and between them the links that are no plain elements (over
 * a pulley, in series with the line absorber) and the nodes that runs end at.
 */

import { GRAVITY } from '../model'
import { OUT, type RunFigures } from './kernel'
import { type LineAbsorber, lineAbsorber } from './line-absorber'
import { freshLink, type Link } from './link'
import type { Mesh } from './mesh'
import { freshPulley, type Pulley } from './pulley'
import { ROPE_DAMPING, type TimeFallInput } from './types'

interface ChainRun {
  first: number
  last: number
  figures: RunFigures
  out: Float64Array
}

export interface Chain {
  mesh: Mesh
  pulleys: Pulley[]
  absorber: LineAbsorber | null
  /** Extension of an absorber whose span does not move, m. */
  absorberAtRest: number
  runs: ChainRun[]
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
  const linkAt = (e: number, pulley: Pulley | null, absorber: LineAbsorber | null): Link =>
    freshLink(chain.EA, mesh.rest[e]!, e, pulley, absorber)
  for (const pulley of chain.pulleys) links.set(pulley.element, linkAt(pulley.element, pulley, null))
  if (chain.absorber) {
    const over = links.get(absorberAt)?.pulley ?? null
    links.set(absorberAt, linkAt(absorberAt, over, chain.absorber))
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
