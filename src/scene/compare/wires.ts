/**
 * A line of the other plan as wires, in plan coordinates: pairs of points, flat. They are drawn dashed and hollow, so
 * that they read without colour.
 */
import { Matrix4, Vector3 } from 'three'
import type { Girder, Line, Plan } from '../../plan/types'
import type { FloorPoint } from '../../study/results'
import { overGirder } from '../place'
import { chain } from '../shapes/solid'
import { type Placed, stanchionPieces } from '../shapes/stanchion'
import { type StrapLeg, strapEdges, strapLegs } from '../shapes/strap'
import { apart } from './moved'

/** A post is drawn this much thicker than it is, so that its two sides stay apart in the picture. */
const HOLLOW = 1.6
/** Radius of the ring that stands for a head, m. */
const RING = 0.11

/** A line with the girder that it stands on; null where the plan lacks one of them. */
function lineOn(plan: Plan, id: string): { line: Line; girder: Girder } | null {
  const line = plan.lines.find((l) => l.id === id)
  const girder = plan.girders.find((g) => g.id === line?.girder)
  return line && girder ? { line, girder } : null
}

/** Outlines of a line's stanchions; without `among` of all of them. */
export function stanchionWires(plan: Plan, line: string, among?: ReadonlySet<string>): number[] {
  const on = lineOn(plan, line)
  return (on ? stanchionPieces(on.line, on.girder, plan.parts) : [])
    .filter((p) => !among || among.has(p.of))
    .flatMap(wires)
}

function wires({ piece, matrix }: Placed): number[] {
  const stretched = (x: number, y: number, z: number): Matrix4 =>
    matrix.clone().multiply(new Matrix4().makeScale(x, y, z))
  if (piece === 'block') return placed(boxEdges, matrix)
  if (piece === 'tube') return placed(boxEdges, stretched(1, 2, 2))
  return piece === 'head' ? placed(ring, matrix) : placed(postEdges, stretched(HOLLOW, HOLLOW, 1))
}

const placed = (points: readonly Vector3[], matrix: Matrix4): number[] =>
  points.flatMap((p) => p.clone().applyMatrix4(matrix).toArray())

const corner = (x: number, y: number, z: number): Vector3 => new Vector3(x, y, z)

/** A unit cube about the origin. */
const boxEdges: Vector3[] = [-0.5, 0.5].flatMap((a) =>
  [-0.5, 0.5].flatMap((b) => [
    ...[corner(-0.5, a, b), corner(0.5, a, b)],
    ...[corner(a, -0.5, b), corner(a, 0.5, b)],
    ...[corner(a, b, -0.5), corner(a, b, 0.5)],
  ]),
)

/** Four edges and the two ends of a square post of half-width 1 from z 0 to 1. */
const postEdges: Vector3[] = (() => {
  const turn = [corner(1, 1, 0), corner(-1, 1, 0), corner(-1, -1, 0), corner(1, -1, 0)]
  const up = (p: Vector3): Vector3 => p.clone().setZ(1)
  return turn.flatMap((p, i) => {
    const next = turn[(i + 1) % 4]!
    return [p, up(p), p, next, up(p), up(next)]
  })
})()

/** Three circles about the origin, one in each plane. */
const ring: Vector3[] = [0, 1, 2].flatMap((plane) =>
  Array.from({ length: 16 }, (_, i) => [i, i + 1].map((k) => onCircle(plane, (k * Math.PI) / 8))).flat(),
)

function onCircle(plane: number, angle: number): Vector3 {
  const [a, b] = [RING * Math.cos(angle), RING * Math.sin(angle)]
  return plane === 0 ? corner(0, a, b) : plane === 1 ? corner(a, 0, b) : corner(a, b, 0)
}

function legsOf(plan: Plan, line: string): StrapLeg[] {
  const on = lineOn(plan, line)
  return on ? strapLegs(on.line, on.girder, plan.parts) : []
}

const legKey = (leg: StrapLeg): string => `${leg.tieBack} ${leg.foot}`

/** Bands of a line's tie-backs; with `now` only those that lie elsewhere in that plan or are gone from it. */
export function strapWires(plan: Plan, line: string, now?: Plan): number[] {
  const present = new Map((now ? legsOf(now, line) : []).map((leg) => [legKey(leg), leg]))
  const differs = (leg: StrapLeg): boolean => {
    const at = present.get(legKey(leg))
    return !at || apart(at.head, leg.head) || apart(at.end, leg.end)
  }
  return strapEdges(legsOf(plan, line).filter(differs))
}

/** The underside of a line's room as a side view shows it: what the fall in time adds is in it. */
export function undersideWires(plan: Plan, id: string, floor: readonly FloorPoint[]): number[] {
  const on = lineOn(plan, id)
  if (!on) return []
  const offset = on.line.stanchions[0]?.offset ?? 0
  return chain(
    floor.flatMap(({ station, depth, excess }) =>
      depth === null ? [] : [overGirder(on.girder, station, offset, -depth - Math.max(0, excess ?? 0))],
    ),
  )
}
