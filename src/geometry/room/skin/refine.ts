/**
 * Rows and columns can not follow a jump of the underside that runs across them, as the rounded front of a span that needs
 * more depth than its neighbour, or of the last swing beside those past the line's end. There single edges are halved
 * until they lie as near the room as the rest. Both triangles of an edge are split at the same corner: the surface stays
 * closed.
 */
import type { Vec3 } from '../../../plan/types'
import { underside } from '../underside'
import { depthAt, takesNear, type Weave } from './column'

/** Edges no longer than this in plan are left, m: half of it is the farthest that their middle can lie from a jump. */
const SHORTEST = 0.016
const ROUNDS = 7
/** More corners than any surface has, so that one number names an edge. */
const MANY = 2 ** 26

export interface Corners {
  /** x, y, z of every corner. */
  positions: number[]
  /** Triangles of the underside. */
  under: number[]
}

const edgeKey = (a: number, b: number): number => (a < b ? a * MANY + b : b * MANY + a)

/** Splits edges of the underside whose middle stands more than `near` off the room, m. */
export function refine(weave: Weave, corners: Corners, near: number): Corners {
  const positions = corners.positions.slice()
  const done: number[][] = []
  // What a round leaves as it is needs no further look: none of its edges misses.
  let active = corners.under
  for (let round = 0; round < ROUNDS && active.length > 0; round++) {
    const middles = new Map<number, number>()
    for (const key of missed(weave, positions, active, near)) {
      middles.set(key, positions.length / 3)
      positions.push(...along(weave, positions, key, 0.5).at)
    }
    const { whole, cut } = split(active, middles)
    done.push(whole)
    active = cut
  }
  return { positions, under: [...done, active].flat() }
}

/**
 * Edges inside the underside that miss the room. Its triangles run every such edge once each way, so that one way alone is
 * looked at; an edge that is run one way only bounds the underside, and the walls that hang on it would come open.
 */
function missed(weave: Weave, positions: number[], under: number[], near: number): number[] {
  const found = new Set<number>()
  eachEdge(under, (a, b) => {
    if (a < b && misses(weave, positions, edgeKey(a, b), near)) found.add(edgeKey(a, b))
  })
  const both = new Set<number>()
  eachEdge(under, (a, b) => {
    if (a > b && found.has(edgeKey(a, b))) both.add(edgeKey(a, b))
  })
  return [...both]
}

function eachEdge(under: number[], visit: (a: number, b: number) => void): void {
  for (let t = 0; t < under.length; t += 3) {
    const [a, b, c] = [under[t]!, under[t + 1]!, under[t + 2]!]
    visit(a, b)
    visit(b, c)
    visit(c, a)
  }
}

/** Edges longer than this, m, or steeper than any swing is deep, are tried at more places: a jump may miss their middle. */
const LONG = 0.1
const STEEP = 0.5
const PLACES = { short: [0.5], long: [0.5, 0.25, 0.75], steep: [0.5, 0.125, 0.25, 0.375, 0.625, 0.75, 0.875] }

function misses(weave: Weave, p: number[], key: number, near: number): boolean {
  const [a, b] = [Math.floor(key / MANY) * 3, (key % MANY) * 3]
  const length = Math.hypot(p[a]! - p[b]!, p[a + 1]! - p[b + 1]!)
  if (length <= SHORTEST) return false
  const steep = Math.abs(p[a + 2]! - p[b + 2]!) > STEEP * length
  const shares = PLACES[steep ? 'steep' : length > LONG ? 'long' : 'short']
  return shares.some((share) => missesAt(weave, p, key, share, near)) && !outside(weave, p, key)
}

/** Beside a rounded rim the surface may stand out by less than its tolerance: there is no underside to follow there. */
function outside(weave: Weave, p: number[], key: number): boolean {
  const [x, y] = along(weave, p, key, 0.5).at
  return underside(weave.room, x, y) === null
}

function missesAt(weave: Weave, p: number[], key: number, share: number, near: number): boolean {
  const { u, v, z, straight } = along(weave, p, key, share)
  return Math.abs(z - straight) > near && !takesNear(weave, u, v, straight, near)
}

interface EdgePlace {
  u: number
  v: number
  z: number
  straight: number
  at: Vec3
}

/** A place on an edge: where it is, how high the room's underside is there and how high the edge. */
function along(weave: Weave, p: number[], key: number, share: number): EdgePlace {
  const [a, b] = [Math.floor(key / MANY) * 3, (key % MANY) * 3]
  const between = (k: number): number => p[a + k]! + (p[b + k]! - p[a + k]!) * share
  const [x, y] = [between(0), between(1)]
  const { ox, oy, ax, ay } = weave.axes
  const u = (x - ox) * ax + (y - oy) * ay
  const v = (y - oy) * ax - (x - ox) * ay
  const z = depthAt(weave, u, v)
  return { u, v, z, straight: between(2), at: [x, y, z] }
}

/** Triangles without a new corner on their edges, and the pieces of the others. */
function split(under: number[], middles: Map<number, number>): { whole: number[]; cut: number[] } {
  const whole: number[] = []
  const cut: number[] = []
  for (let t = 0; t < under.length; t += 3) {
    const corners = [under[t]!, under[t + 1]!, under[t + 2]!]
    const cuts = corners.map((a, k) => middles.get(edgeKey(a, corners[(k + 1) % 3]!)))
    if (cuts.every((c) => c === undefined)) whole.push(...corners)
    else cut.push(...cutTriangle(corners, cuts))
  }
  return { whole, cut }
}

/** A triangle turned so that its cuts come first: one, two or three of them. */
function cutTriangle(corners: number[], cuts: (number | undefined)[]): number[] {
  const count = cuts.filter((c) => c !== undefined).length
  const first = cuts.findIndex((c, k) => c !== undefined && (count !== 2 || cuts[(k + 1) % 3] !== undefined))
  const [a, b, c] = [0, 1, 2].map((k) => corners[(first + k) % 3]!) as [number, number, number]
  const [ab, bc, ca] = [0, 1, 2].map((k) => cuts[(first + k) % 3]) as [number, number, number]
  if (count === 1) return [a, ab, c, ab, b, c]
  if (count === 2) return [a, ab, c, ab, b, bc, ab, bc, c]
  return [a, ab, ca, ab, b, bc, ca, bc, c, ab, bc, ca]
}
