/**
 * The rope as a chain of lumped masses, at rest on the unloaded line. Nodes are bits of rope, not places: rope that
 * slips over a sliding stanchion takes its nodes along. Every point where a connector is tied is a node, and where the
 * rope is held so is every stanchion; between those points elements are equal.
 */
import { pointAt } from '../catenary'
import { AT_STANCHION, type Tie, type TiePoint, tiePoint } from './tie'
import { LONGEST_ELEMENT, type TimeFallInput, type TimeFallOptions } from './types'

/** What a node may do. */
export const FREE = 0
export const FIXED = 1
/** An end head: moves along the line on its spring. */
export const HEAD = 2

/** A stretch of equal elements between nodes first and last. */
export interface Piece {
  first: number
  last: number
  rest: number
}

export interface Mesh {
  count: number
  /** x, z, u, w of each node. */
  nodes: Float64Array
  /** kg */
  mass: Float64Array
  kind: Uint8Array
  /** Pieces that move; where the rope is held, spans without a fall stay as they are. */
  pieces: Piece[]
  /** Unstretched length of every element, m, and the span that it starts in. */
  rest: Float64Array
  /** Heads as they stand on the unloaded line, m. */
  headX: number[]
  headZ: number[]
  /** Node at each stanchion where the rope is fixed or ends; -1 where it slides. */
  headNode: number[]
  /** Unstretched rope up to each stanchion, m. */
  ropeTo: number[]
  ties: Tie[]
  /** First and last span that moves. */
  from: number
  to: number
}

function resting(input: TimeFallInput): { headX: number[]; headZ: number[]; ropeTo: number[] } {
  const headX = [...input.model.x]
  const n = headX.length - 1
  headX[0] = headX[0]! + input.line.headShift[0]
  headX[n] = headX[n]! - input.line.headShift[1]
  const ropeTo = [0]
  for (const s of input.line.spans) ropeTo.push(ropeTo[ropeTo.length - 1]! + s.L)
  return { headX, headZ: [...input.model.z], ropeTo }
}

/** Longest element allowed: short spans keep at least six. */
function longestElement(input: TimeFallInput, options: TimeFallOptions): number {
  const wanted = Math.min(options.element ?? LONGEST_ELEMENT, LONGEST_ELEMENT)
  return Math.min(wanted, ...input.line.spans.map((s) => s.L / 6))
}

/** Points that must be nodes, in order and apart: ends, ties, and where held every stanchion. */
function fixedPoints(ropeTo: number[], held: boolean, ties: TiePoint[]): number[] {
  const stops = held ? [...ropeTo] : [0, ropeTo[ropeTo.length - 1]!]
  for (const t of ties) {
    if (t.stanchion < 0 && !stops.some((s) => Math.abs(s - t.at) < AT_STANCHION)) stops.push(t.at)
  }
  return stops.sort((a, b) => a - b)
}

/**
 * Spans that move: all of them where rope slides; where held, from the first to the last with a fall on its rope; none
 * where everybody is tied to a stanchion.
 */
function movingSpans(input: TimeFallInput, ties: TiePoint[]): { from: number; to: number } {
  const spans = input.workers.filter((_, i) => ties[i]!.stanchion < 0).map((w) => w.span)
  if (spans.length === 0) return { from: 0, to: -1 }
  if (input.grip === 'sliding') return { from: 0, to: input.line.spans.length - 1 }
  return { from: Math.min(...spans), to: Math.max(...spans) }
}

const emptyNodes = (
  count: number,
): Pick<Mesh, 'count' | 'nodes' | 'mass' | 'kind' | 'pieces' | 'rest' | 'ties'> => ({
  count,
  nodes: new Float64Array(4 * count),
  mass: new Float64Array(count),
  kind: new Uint8Array(count),
  pieces: [],
  rest: new Float64Array(count - 1),
  ties: [],
})

/** Builds the chain for a fall. */
export function buildMesh(input: TimeFallInput, options: TimeFallOptions): Mesh {
  const { headX, headZ, ropeTo } = resting(input)
  const points = input.workers.map((w) => tiePoint(input, w, headX, headZ, ropeTo))
  const stops = fixedPoints(ropeTo, input.grip === 'held', points)
  const longest = longestElement(input, options)
  const parts = stops.slice(1).map((s, i) => Math.max(1, Math.ceil((s - stops[i]!) / longest - 1e-9)))
  const count = 1 + parts.reduce((a, b) => a + b, 0)
  const moving = movingSpans(input, points)
  const mesh: Mesh = { ...emptyNodes(count), headX, headZ, headNode: ropeTo.map(() => -1), ropeTo, ...moving }
  layElements(input, mesh, stops, parts)
  holdNodes(input, mesh, stops, parts)
  mesh.ties = points.map((p) => tieOf(mesh, stops, parts, p))
  return mesh
}

/** Puts a node on the resting line, at unstretched rope s from the first head. */
function placeNode(input: TimeFallInput, mesh: Mesh, node: number, s: number): void {
  let span = 0
  while (span < input.line.spans.length - 1 && s > mesh.ropeTo[span + 1]!) span++
  const { stiffness, weight } = input.set
  const p = pointAt(input.line.spans[span]!, s - mesh.ropeTo[span]!, stiffness, weight)
  mesh.nodes[4 * node] = mesh.headX[span]! + p.dx
  mesh.nodes[4 * node + 1] = mesh.headZ[span]! + p.dz
}

/** Places the nodes and lumps the masses, half an element to each side. */
function layElements(input: TimeFallInput, mesh: Mesh, stops: number[], parts: number[]): void {
  let node = 0
  placeNode(input, mesh, 0, 0)
  for (const [i, n] of parts.entries()) {
    const rest = (stops[i + 1]! - stops[i]!) / n
    const first = node
    for (let j = 1; j <= n; j++) {
      mesh.rest[node] = rest
      mesh.mass[node]! += (rest * input.model.massPerMetre) / 2
      node++
      mesh.mass[node]! += (rest * input.model.massPerMetre) / 2
      placeNode(input, mesh, node, stops[i]! + j * rest)
    }
    const middle = (stops[i]! + stops[i + 1]!) / 2
    if (middle > mesh.ropeTo[mesh.from]! && middle < mesh.ropeTo[mesh.to + 1]!)
      mesh.pieces.push({ first, last: node, rest })
  }
}

/** The heads: ends on their springs, and where held the stanchions between, which do not move. */
function holdNodes(input: TimeFallInput, mesh: Mesh, stops: number[], parts: number[]): void {
  const n = mesh.headX.length - 1
  for (const [j, s] of mesh.ropeTo.entries()) {
    const end = j === 0 || j === n
    if (!end && input.grip === 'sliding') continue
    const node = nodeAt(stops, parts, s)
    mesh.headNode[j] = node
    mesh.kind[node] = end ? HEAD : FIXED
    mesh.nodes[4 * node] = mesh.headX[j]!
    mesh.nodes[4 * node + 1] = mesh.headZ[j]!
    if (end) mesh.mass[node]! += input.model.endMass[j === 0 ? 0 : 1]
  }
}

/** Node at the stop nearest to s. */
function nodeAt(stops: number[], parts: number[], s: number): number {
  let best = 0
  for (const [i, at] of stops.entries()) if (Math.abs(at - s) < Math.abs(stops[best]! - s)) best = i
  return parts.slice(0, best).reduce((a, b) => a + b, 0)
}

function tieOf(mesh: Mesh, stops: number[], parts: number[], p: TiePoint): Tie {
  if (p.stanchion >= 0) return { node: -1, stanchion: p.stanchion, x: p.x, z: p.z }
  const node = nodeAt(stops, parts, p.at)
  return { node, stanchion: -1, x: mesh.nodes[4 * node]!, z: mesh.nodes[4 * node + 1]! }
}
