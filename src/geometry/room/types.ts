/**
 * The room a fall needs (mechanics section 8), in words. At a station of a line a worker hangs from the sagged point of
 * attachment A: its height above the girder's top is the unloaded rope's less the line drop d. The D-ring swings about A
 * at r = length + e (a retractable: length + max(0, height - dRingHeight) + e) in the vertical plane square to the
 * girder, to both sides, as far as asin(min(1, r0/r)); the feet sweep the arc of R = r + harnessStretch + dRingHeight.
 * From the end stanchions the same swing goes on in every direction past the line's end in which one can stand. The
 * body is a disc in plan of bodyRadius + marginSide around its feet, and marginBelow and the excess of the fall in time
 * lie under them. The room of a line is everything between that underside and the plane of its girder's top, where the
 * underside is the lower; the room of a plan is the union over its lines.
 */
import type { Vec2 } from '../../plan/types'
import type { GirderFrame } from '../girder'

/** Which figures of the line and the connector a swing belongs to. */
export interface SwingCorner {
  worker: string
  line: 'soft' | 'stiff'
  connector: 'low' | 'high'
}

export interface RoomWorker {
  id: string
  type: 'lanyard' | 'retractable'
  /** Of the connector; of a retractable its lock-off distance, m. */
  length: number
  harnessStretch: number
  dRingHeight: number
}

/** One corner at one station: what the statics say, m. */
export interface RoomSample {
  /** d, down from the unloaded line of the same set. */
  drop: number
  /** e, elastic and torn together. */
  extension: number
  /** Of the unloaded line of the same set above the girder's top. */
  height: number
}

export interface RoomStation {
  station: number
  /** One for each of the input's corners, in their order; a text says why one is not known. */
  samples: (RoomSample | { unknown: string })[]
}

/** What must be added to the depth between two stations, m: the worst fall in time over the worst by energy. */
export interface SpanExcess {
  from: number
  to: number
  excess: number
}

/** A convex piece of walking surface in plan, counter-clockwise. */
export interface SurfacePiece {
  outline: Vec2[]
}

export interface RoomInput {
  line: string
  girder: string
  frame: GirderFrame
  /** Stations and offsets of the stanchions in order; the first and the last end the line. */
  stanchions: { station: number; offset: number }[]
  workers: RoomWorker[]
  corners: SwingCorner[]
  /** By station, from the first to the last stanchion. */
  stations: RoomStation[]
  excess: SpanExcess[]
  marginBelow: number
  /** bodyRadius + marginSide, m. */
  side: number
  /** The walking surface that the line serves: see surface.ts. */
  surface: SurfacePiece[]
}

/**
 * The swing of one corner in one vertical plane: an arc of feet about (x, y, z) in the direction (dx, dy), both ways
 * as far as `reach` in plan. Everything the room needs is a list of these.
 */
export interface Slice {
  x: number
  y: number
  /** Point of attachment, lowered by marginBelow and the excess: the underside is z - sqrt(radius^2 - t^2). */
  z: number
  dx: number
  dy: number
  /** R, m. */
  radius: number
  /** R sin(half-angle), m. */
  reach: number
  station: number
  /** Index into the room's corners. */
  corner: number
}

/** Swings of one corner in all directions past an end stanchion, about the same point. */
export interface Fan {
  x: number
  y: number
  /** Greatest of its slices, m. */
  reach: number
  slices: Slice[]
}

/** z = z0 + gx x + gy y. */
export interface Plane {
  z0: number
  gx: number
  gy: number
}

export interface Room {
  line: string
  girder: string
  frame: GirderFrame
  corners: SwingCorner[]
  /** Square to the girder, by station. */
  slices: Slice[]
  /** Past the two ends, one for each corner and end. */
  ends: Fan[]
  /** Half-width of what moves, in plan, m. */
  side: number
  /** Plane of the girder's top: the room lies under it. */
  lid: Plane
  surface: SurfacePiece[]
  /** Why a part of the room is missing, or null where it is whole. */
  unknown: string | null
}
