/** What a plot is made of, and the frame of scales in which its parts are drawn. */
import type { scaleLinear } from 'd3-scale'
import type { SvgElement } from '../svg'
import type { Ink } from '../theme'
import type { Point, Window } from '../view'

export interface PlotAxis {
  label: string
  unit: string
  /** Absent: what the lines span. */
  range?: Window
  format?: (value: number) => string
}

export interface PlotLine {
  name: string
  points: Point[]
  ink?: Ink
  dash?: [number, number]
  width?: number
}

export interface PlotInput {
  x: PlotAxis
  y: PlotAxis
  lines: PlotLine[]
  markers?: { at: Point; text?: string; ink?: Ink; ref?: string }[]
  /** A strip between two values of y, as between a low and a high figure. */
  bands?: { name?: string; points: { x: number; low: number; high: number }[]; ink?: Ink }[]
  /** A limit to stay under or over. */
  limits?: { value: number; text: string; ink?: Ink }[]
  /** Where the cursor stands, in x. */
  cursor?: number
  title?: string
}

export interface Plot {
  picture: SvgElement
  /** x and y under a picture point, for pointers. */
  at(point: Point): Point
}

export interface Frame {
  left: number
  right: number
  top: number
  bottom: number
  x: ReturnType<typeof scaleLinear>
  y: ReturnType<typeof scaleLinear>
}

export const place = (f: Frame, [x, y]: Point): [number, number] => [Number(f.x(x)), Number(f.y(y))]
