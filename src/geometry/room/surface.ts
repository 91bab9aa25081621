/**
 * The walking surface that a line serves: its girder's top, and every deck or other girder top that one can step onto
 * from there. Pieces are convex, in plan, counter-clockwise.
 */
import earcut from 'earcut'
import type { Deck, Girder, Plan, Vec2 } from '../../plan/types'
import { type GirderFrame, girderFrame, topPoint } from '../girder'
import { counterClockwise, nearestInPolygon } from '../polygon'
import type { SurfacePiece } from './types'

/** A gap in plan that a person steps across, m (practice). */
const STEP_ACROSS = 0.3
/** A difference in height that a person steps up or down, m (practice). */
const STEP_UP = 0.5

interface Candidate {
  outline: Vec2[]
  elevation: (p: Vec2) => number
}

/** The outline of a girder's top in plan. */
export function topOutline(girder: Girder, width: number = girder.section.topWidth): Vec2[] {
  const frame = girderFrame(girder)
  const corner = (station: number, offset: number): Vec2 => {
    const p = topPoint(frame, station, offset)
    return [p[0], p[1]]
  }
  const half = width / 2
  return [corner(0, -half), corner(frame.length, -half), corner(frame.length, half), corner(0, half)]
}

/** Elevation of a girder's top, carried on past its ends. */
export function topElevation(frame: GirderFrame, p: Vec2): number {
  const flat = (p[0] - frame.origin[0]) * frame.along[0] + (p[1] - frame.origin[1]) * frame.along[1]
  return frame.origin[2] + (flat / frame.planRate ** 2) * frame.rise
}

/** A deck's outline as convex pieces; an outline of no area gives none. */
export function deckPieces(deck: Deck): Vec2[][] {
  const corners = deck.outline
  const order = earcut(corners.flat())
  const pieces: Vec2[][] = []
  for (let i = 0; i + 2 < order.length; i += 3) {
    pieces.push(counterClockwise([corners[order[i]!]!, corners[order[i + 1]!]!, corners[order[i + 2]!]!]))
  }
  return pieces
}

function candidates(plan: Plan, own: string): Candidate[] {
  const decks = (plan.decks ?? []).flatMap((deck) =>
    deckPieces(deck).map((outline) => ({ outline, elevation: () => deck.elevation })),
  )
  const tops = plan.girders
    .filter((g) => g.id !== own)
    .map((g) => {
      const frame = girderFrame(g)
      return { outline: topOutline(g), elevation: (p: Vec2) => topElevation(frame, p) }
    })
  return [...decks, ...tops]
}

/** The pieces that one can walk to from a girder's top, its own top first. */
export function walkingSurface(plan: Plan, girder: Girder): SurfacePiece[] {
  const frame = girderFrame(girder)
  const reached: Candidate[] = [
    { outline: topOutline(girder), elevation: (p: Vec2) => topElevation(frame, p) },
  ]
  let left = candidates(plan, girder.id)
  for (let i = 0; i < reached.length; i++) {
    const near = left.filter((c) => stepsOnto(reached[i]!, c))
    left = left.filter((c) => !near.includes(c))
    reached.push(...near)
  }
  return reached.map(({ outline }) => ({ outline }))
}

/** Whether the boxes round two outlines leave more than a step between them: then no two of their points are nearer. */
function farApart(a: Vec2[], b: Vec2[]): boolean {
  return ([0, 1] as const).some((i) => {
    const [as, bs] = [a.map((p) => p[i]), b.map((p) => p[i])]
    return Math.min(...bs) - Math.max(...as) > STEP_ACROSS || Math.min(...as) - Math.max(...bs) > STEP_ACROSS
  })
}

function stepsOnto(from: Candidate, to: Candidate): boolean {
  if (farApart(from.outline, to.outline)) return false
  const [p, q] = nearestPair(from.outline, to.outline)
  if (Math.hypot(p[0] - q[0], p[1] - q[1]) > STEP_ACROSS) return false
  return Math.abs(from.elevation(p) - to.elevation(q)) <= STEP_UP
}

/** Nearest points of two convex polygons: found from every corner, and from the middles for tops that cross. */
function nearestPair(a: Vec2[], b: Vec2[]): [Vec2, Vec2] {
  let best: [Vec2, Vec2] = [a[0]!, b[0]!]
  let least = Number.POSITIVE_INFINITY
  const offer = (p: Vec2, q: Vec2): void => {
    const d = Math.hypot(p[0] - q[0], p[1] - q[1])
    if (d < least) [least, best] = [d, [p, q]]
  }
  for (const p of sampled(a)) offer(p, nearestInPolygon(b, p))
  for (const q of sampled(b)) offer(nearestInPolygon(a, q), q)
  return best
}

/** Corners of an outline with points between them no farther than half a step apart. */
function sampled(outline: Vec2[]): Vec2[] {
  return outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length]!
    const parts = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / (STEP_ACROSS / 2)))
    return Array.from({ length: parts }, (_, k): Vec2 => {
      const t = k / parts
      return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]
    })
  })
}

/**
 * How far one can stand from a point in a horizontal direction, m: to the last edge of the surface that is reached
 * without a gap wider than a step. 0 where the point lies off the surface.
 */
export function standingReach(surface: SurfacePiece[], from: Vec2, direction: Vec2): number {
  const covered = surface
    .map((piece) => coveredPart(piece.outline, from, direction))
    .filter((part): part is [number, number] => part !== null && part[1] >= 0)
    .sort((a, b) => a[0] - b[0])
  let reach = 0
  for (const [start, end] of covered) {
    if (start > reach + STEP_ACROSS) break
    reach = Math.max(reach, end)
  }
  return reach
}

/** Where the ray from + t direction runs through a convex outline: [enters, leaves], or null. */
function coveredPart(outline: Vec2[], from: Vec2, direction: Vec2): [number, number] | null {
  let low = Number.NEGATIVE_INFINITY
  let high = Number.POSITIVE_INFINITY
  for (let i = 0; i < outline.length; i++) {
    const a = outline[i]!
    const b = outline[(i + 1) % outline.length]!
    const nx = a[1] - b[1]
    const ny = b[0] - a[0]
    const inside = nx * (from[0] - a[0]) + ny * (from[1] - a[1])
    const rate = nx * direction[0] + ny * direction[1]
    if (Math.abs(rate) < 1e-12) {
      if (inside < -1e-12) return null
    } else if (rate > 0) low = Math.max(low, -inside / rate)
    else high = Math.min(high, -inside / rate)
  }
  return low <= high ? [low, high] : null
}
