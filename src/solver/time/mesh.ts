/**
 * The rope as a chain of lumped masses, at rest on the unloaded line. Nodes are bits of rope, not places: rope that
 * slips over a sliding stanchion takes its nodes along. Every point where a connector is tied is a node, and where the
 * rope is held so is every stanchion; between those points elements are equal.
 */
import { pointAt } from '../catenary'
import { LONGEST_ELEMENT, type TimeFallInput, type TimeFallOptions, type TimeWorker } from './types'

/** What a node may do. */
export const FREE = 0
export const FIXED = 1
/** An end head: moves along the line on its spring. */
export const HEAD = 2

/** Nearer to a stanchion than this a connector counts as tied to it: the line cannot give there, m. */
export const AT_STANCHION = 0.03

/** A stretch of equal elements between nodes first and last. */
export interface Piece {
  first: number
  last: number
  rest: number
}

/** A point that a connector is tied to: a node of the rope, or (node -1) a stanchion's head. */
export interface Tie {
  node: number
  stanchion: number
  x: number
  z: number
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

/** Unstretched rope from a span's first head to the horizontal distance x from it, m. */
export function ropeUpTo(input: TimeFallInput, span: number, x: number): number {
  const s = input.line.spans[span]!
  const { stiffness, weight } = input.set
  let low = 0
  let high = s.L
  for (let i = 0; i < 200 && high - low > 1e-13 * s.L; i++) {
    const mid = (low + high) / 2
    if (pointAt(s, mid, stiffness, weight).dx < x) low = mid
    else high = mid
  }
  return (low + high) / 2
}

/** Where a worker's connector is tied on the resting line. */
interface Point {
  at: number
  stanchion: number
  x: number
  z: number
}

function tiePoint(
  input: TimeFallInput,
  w: TimeWorker,
  headX: number[],
  headZ: number[],
  ropeTo: number[],
): Point {
  const local = w.x - headX[w.span]!
  const reach = headX[w.span + 1]! - headX[w.span]!
  if (local < AT_STANCHION || reach - local < AT_STANCHION) {
    const stanchion = local < reach / 2 ? w.span : w.span + 1
    return { at: -1, stanchion, x: headX[stanchion]!, z: headZ[stanchion]! }
  }
  const p = ropeUpTo(input, w.span, local)
  const z = headZ[w.span]! + pointAt(input.line.spans[w.span]!, p, input.set.stiffness, input.set.weight).dz
  return { at: ropeTo[w.span]! + p, stanchion: -1, x: w.x, z }
}

/** Elevation of the unloaded line where a worker's connector is tied, m. */
export function lineElevation(input: TimeFallInput, w: TimeWorker): number {
  const g = resting(input)
  return tiePoint(input, w, g.headX, g.headZ, g.ropeTo).z
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
function fixedPoints(ropeTo: number[], held: boolean, ties: Point[]): number[] {
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
function movingSpans(input: TimeFallInput, ties: Point[]): { from: number; to: number } {
  const spans = input.workers.filter((_, i) => ties[i]!.stanchion < 0).map((w) => w.span)
  if (spans.length === 0) return { from: 0, to: -1 }
  if (input.grip === 'sliding') return { from: 0, to: input.line.spans.length - 1 }
  return { from: Math.min(...spans), to: Math.max(...spans) }
}

/** Builds the chain for a fall. */
export function buildMesh(input: TimeFallInput, options: TimeFallOptions): Mesh {
  const { headX, headZ, ropeTo } = resting(input)
  const held = input.grip === 'held'
  const points = input.workers.map((w) => tiePoint(input, w, headX, headZ, ropeTo))
  const stops = fixedPoints(ropeTo, held, points)
  const longest = longestElement(input, options)
  const parts = stops.slice(1).map((s, i) => Math.max(1, Math.ceil((s - stops[i]!) / longest - 1e-9)))
  const count = 1 + parts.reduce((a, b) => a + b, 0)
  const moving = movingSpans(input, points)
  const mesh: Mesh = {
    count,
    nodes: new Float64Array(4 * count),
    mass: new Float64Array(count),
    kind: new Uint8Array(count),
    pieces: [],
    rest: new Float64Array(count - 1),
    headX,
    headZ,
    headNode: ropeTo.map(() => -1),
    ropeTo,
    ties: [],
    ...moving,
  }
  layElements(input, mesh, stops, parts)
  holdNodes(input, mesh, stops, parts)
  mesh.ties = points.map((p) => tieOf(mesh, stops, parts, p))
  return mesh
}

/** Places the nodes and lumps the masses, half an element to each side. */
function layElements(input: TimeFallInput, mesh: Mesh, stops: number[], parts: number[]): void {
  const { stiffness, weight } = input.set
  let node = 0
  let span = 0
  const place = (s: number): void => {
    while (span < input.line.spans.length - 1 && s > mesh.ropeTo[span + 1]!) span++
    const p = pointAt(input.line.spans[span]!, s - mesh.ropeTo[span]!, stiffness, weight)
    mesh.nodes[4 * node] = mesh.headX[span]! + p.dx
    mesh.nodes[4 * node + 1] = mesh.headZ[span]! + p.dz
  }
  place(0)
  for (const [i, n] of parts.entries()) {
    const rest = (stops[i + 1]! - stops[i]!) / n
    const first = node
    for (let j = 1; j <= n; j++) {
      mesh.rest[node] = rest
      mesh.mass[node]! += (rest * input.model.massPerMetre) / 2
      node++
      mesh.mass[node]! += (rest * input.model.massPerMetre) / 2
      place(stops[i]! + j * rest)
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

function tieOf(mesh: Mesh, stops: number[], parts: number[], p: Point): Tie {
  if (p.stanchion >= 0) return { node: -1, stanchion: p.stanchion, x: p.x, z: p.z }
  const node = nodeAt(stops, parts, p.at)
  return { node, stanchion: -1, x: mesh.nodes[4 * node]!, z: mesh.nodes[4 * node + 1]! }
}
