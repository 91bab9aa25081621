/**
 * Where texts go so that none lies on another: each is tried at its place, then moved its own way in small steps, and
 * left out if it is optional and there is no room. What must be read keeps its place in the order of the list.
 */
import { textWidth } from './text-size'
import type { Point } from './view'

export interface Box {
  left: number
  top: number
  right: number
  bottom: number
}

export interface LabelRequest {
  at: Point
  text: string
  size: number
  bold: boolean
  anchor: 'start' | 'middle' | 'end'
  dodge?: 'up' | 'down' | 'left' | 'right' | undefined
  optional: boolean
  /** What a plate under the text takes beyond it, picture units. */
  grow?: number | undefined
}

export interface PlacedLabel {
  at: [number, number]
  /** Of the text, without what its plate takes beyond it. */
  box: Box
}

export const overlaps = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom

/** The box of one line of text whose baseline starts, is centred or ends at a point. */
function labelBox(at: Point, text: string, size: number, bold: boolean, anchor: string): Box {
  const width = textWidth(text, size, bold)
  const left = at[0] - (anchor === 'middle' ? width / 2 : anchor === 'end' ? width : 0)
  return { left, right: left + width, top: at[1] - size * 0.85, bottom: at[1] + size * 0.25 }
}

const ways = { up: [0, -1], down: [0, 1], left: [-1, 0], right: [1, 0] } as const

/** Labels that were placed so far within one picture. */
export class LabelSpace {
  private readonly taken: Box[] = []
  constructor(
    private readonly width: number,
    private readonly height: number,
  ) {}

  /** Keeps a box free of texts that come later. */
  reserve(box: Box): void {
    this.taken.push(box)
  }

  private free(box: Box): boolean {
    return !this.taken.some((other) => overlaps(box, other))
  }

  private within(box: Box): boolean {
    return box.left >= 0 && box.top >= 0 && box.right <= this.width && box.bottom <= this.height
  }

  /** A place for a text, or null where it is optional and there is none. */
  place(request: LabelRequest): PlacedLabel | null {
    const first = this.nudgedInside(request)
    const places = [...candidates(first, request), ...(request.optional ? [] : around(first, request))]
    for (const at of places) {
      const box = labelBox(at, request.text, request.size, request.bold, request.anchor)
      const whole = grown(box, request.grow ?? 0)
      if (!this.free(whole) || !this.within(box)) continue
      this.taken.push(whole)
      return { at, box }
    }
    if (request.optional) return null
    const box = labelBox(first, request.text, request.size, request.bold, request.anchor)
    this.taken.push(box)
    return { at: first, box }
  }

  /** A text that must be read is pulled in from the picture's edge; an optional one is left where it is. */
  private nudgedInside(request: LabelRequest): [number, number] {
    const [x, y] = request.at
    if (request.optional) return [x, y]
    const box = labelBox(request.at, request.text, request.size, request.bold, request.anchor)
    const right = Math.max(0, 1 - box.left) - Math.max(0, box.right - this.width + 1)
    const down = Math.max(0, 1 - box.top) - Math.max(0, box.bottom - this.height + 1)
    return [x + right, y + down]
  }
}

const grown = ({ left, top, right, bottom }: Box, by: number): Box => ({
  left: left - by,
  top: top - by * 0.7,
  right: right + by,
  bottom: bottom + by * 0.7,
})

/** For what must be read and has no place on its own way: to both sides of it, nearest first. */
function around([x, y]: [number, number], { size }: LabelRequest): [number, number][] {
  const steps = [-4, -3, -2, -1, 0, 1, 2, 3, 4]
  return [1, 2, 3, 4, 5, 6].flatMap((away) =>
    [-1, 1].flatMap((side) =>
      steps.map((n): [number, number] => [x + side * away * size * 2, y + n * size * 0.6]),
    ),
  )
}

function candidates(at: [number, number], request: LabelRequest): [number, number][] {
  if (!request.dodge) return [at]
  const [dx, dy] = ways[request.dodge]
  const step = request.size * 0.6
  const near = Array.from({ length: 24 }, (_, i): [number, number] => [
    at[0] + dx * step * i,
    at[1] + dy * step * i,
  ])
  const back = Array.from({ length: 8 }, (_, i): [number, number] => [
    at[0] - dx * step * (i + 1),
    at[1] - dy * step * (i + 1),
  ])
  return [...near, ...back]
}
