/**
 * The pieces of a line's stanchions as placed copies of a few unit bodies, in plan coordinates: post with its head, bracket
 * tube through the loops, arms with levelling bolts, plates under them. Sizes the plan does not tell (diameters of post,
 * tube and bolts) are those of a plain picture and enter no computation.
 */
import { Matrix4, Vector3 } from 'three'
import { rowUnder } from '../../geometry/loops'
import type { BracketPart, Girder, Line, Part, Stanchion, StanchionPart } from '../../plan/types'
import { girderMatrix } from '../place'

export type Piece = 'round' | 'tube' | 'block' | 'head'

export interface Placed {
  piece: Piece
  matrix: Matrix4
  /** Id of the stanchion that it belongs to. */
  of: string
}

const POST = 0.038
const TUBE = 0.03
const BOLT = 0.013
const ARM = 0.045

export const stanchionPieces = (line: Line, girder: Girder, parts: readonly Part[]): Placed[] =>
  line.stanchions.flatMap((s) => oneStanchion(parts, girder, s))

function oneStanchion(parts: readonly Part[], girder: Girder, s: Stanchion): Placed[] {
  const post = part<StanchionPart>(parts, s.part, 'stanchion')
  const bracket = part<BracketPart>(parts, s.bracket, 'bracket')
  const frame = girderMatrix(girder)
  const axis = tubeHeight(girder, s.offset)
  const put = (piece: Piece, x: number, y: number, z: number, size: [number, number, number]): Placed => ({
    piece,
    of: s.id,
    matrix: frame
      .clone()
      .multiply(new Matrix4().makeTranslation(s.station + x, s.offset + y, z))
      .scale(new Vector3(...size)),
  })
  const pieces = bracket ? bracketPieces(put, bracket, axis, s.plate ?? 0) : []
  if (!post) return pieces
  const from = bracket ? axis - TUBE : 0
  pieces.push(put('round', 0, 0, from, [POST, POST, post.height - from]))
  pieces.push(put('head', 0, 0, post.height, [1, 1, 1]))
  return pieces
}

type Put = (piece: Piece, x: number, y: number, z: number, size: [number, number, number]) => Placed

function bracketPieces(put: Put, b: BracketPart, axis: number, plate: number): Placed[] {
  const top = axis + TUBE + ARM / 2
  const pieces = [
    put('tube', 0, 0, axis, [b.tubeLength, TUBE, TUBE]),
    put('block', 0, 0, top, [b.boltsAlong + ARM, ARM * 1.4, ARM]),
  ]
  for (const x of [-b.boltsAlong / 2, b.boltsAlong / 2]) {
    pieces.push(put('block', x, 0, top, [ARM, b.boltsAcross + ARM, ARM]))
    for (const y of [-b.boltsAcross / 2, b.boltsAcross / 2]) {
      pieces.push(put('round', x, y, plate, [BOLT, BOLT, top + 0.06 - plate]))
      pieces.push(put('round', x, y, plate, [BOLT * 2, BOLT * 2, 0.012]))
      if (plate > 0) pieces.push(put('block', x, y, plate / 2, [0.15, 0.15, plate]))
    }
  }
  return pieces
}

/** Axis of the tube under the tops of its loops; a hand's height where no row is near enough. */
function tubeHeight(girder: Girder, offset: number): number {
  const row = rowUnder(girder, offset)
  return row ? Math.max(TUBE, row.height - row.barDiameter - TUBE) : 0.1
}

function part<P extends Part>(parts: readonly Part[], id: string, kind: P['kind']): P | undefined {
  return parts.find((p) => p.id === id && p.kind === kind) as P | undefined
}
