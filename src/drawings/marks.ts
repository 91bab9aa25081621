/**
 * A drawing before it is a picture: marks in model metres on named layers. `picture.ts` makes SVG of them and
 * `src/handover/files/dxf.ts` makes a drawing file of the same marks, so the two can't differ.
 */
import type { Ink } from './theme'
import type { Point } from './view'

/** Layers as they stand in an exported drawing. */
export type Layer =
  | 'GIRDERS'
  | 'LOOPS'
  | 'STANCHIONS'
  | 'TIE-BACKS'
  | 'ROPE-INSTALLED'
  | 'ROPE-FALL'
  | 'FALL-ROOM'
  | 'CLASHES'
  | 'OBSTACLES'
  | 'DIMENSIONS'
  | 'TEXT'

interface MarkCommon {
  layer: Layer
  /** What this is in the plan, as 'stanchion:S2'; it becomes `data-ref`. */
  ref?: string
}

export interface PathMark extends MarkCommon {
  kind: 'path'
  points: Point[]
  closed?: boolean
  stroke?: Ink
  /** In firm strokes: 1 is the theme's stroke. */
  width?: number
  dash?: [number, number]
  fill?: Ink
  fillOpacity?: number
  /** Diagonal lines inside a closed shape, so that it reads without colour. */
  hatch?: Ink
  /** A wide unseen stroke around it for the pointer, on screen. */
  grab?: boolean
}

export interface DotMark extends MarkCommon {
  kind: 'dot'
  at: Point
  /** Radius in picture units. */
  radius: number
  stroke?: Ink
  fill?: Ink
  grab?: boolean
}

export interface TextMark extends MarkCommon {
  kind: 'text'
  at: Point
  text: string
  ink?: Ink
  bold?: boolean
  /** In text sizes: 1 is the theme's. */
  size?: number
  anchor?: 'start' | 'middle' | 'end'
  /** Shift from `at` in picture units, right and down. */
  shift?: Point
  /** Which way it may move out of the way of others; absent: it may not. */
  dodge?: 'up' | 'down' | 'left' | 'right'
  /** Left out where there is no room for it; otherwise it is always shown. */
  optional?: boolean
  /** A plate behind it. */
  plate?: Ink
}

/** A dimension between two points, drawn `away` picture units from them (positive: up or to the right). */
export interface DimensionMark extends MarkCommon {
  kind: 'dimension'
  from: Point
  to: Point
  text: string
  axis: 'across' | 'up'
  away: number
  ink?: Ink
  /** Its text may come to lie on something dark, so on the screen its halo is as good as a ground. */
  clear?: boolean
  optional?: boolean
}

export type Mark = PathMark | DotMark | TextMark | DimensionMark
