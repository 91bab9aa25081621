/** Keeps labels from covering one another: the more important first, each where it wants to be or not at all. */

export interface Box {
  x: number
  y: number
  width: number
  height: number
}

export interface Wanted<S> {
  seat: S
  rank: number
  box: Box
}

/** Clear space between two labels, px. */
const CLEAR = 2

const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width + CLEAR &&
  b.x < a.x + a.width + CLEAR &&
  a.y < b.y + b.height + CLEAR &&
  b.y < a.y + a.height + CLEAR

const within = (box: Box, size: { width: number; height: number }): boolean =>
  box.x + box.width > 0 && box.y + box.height > 0 && box.x < size.width && box.y < size.height

/** From this rank on a label is pushed into the picture rather than cut at its edge. */
export const KEPT_WHOLE = 80

/** Clear space to the picture's edge, px. */
const EDGE = 6

const clamp = (v: number, from: number, to: number): number => Math.max(from, Math.min(v, Math.max(from, to)))

const pushed = (box: Box, size: { width: number; height: number }): Box => ({
  ...box,
  x: clamp(box.x, EDGE, size.width - box.width - EDGE),
  y: clamp(box.y, EDGE, size.height - box.height - EDGE),
})

/** What is shown, and where; what lies off the picture is left out. Equal ranks keep their order. */
export function place<S>(wanted: readonly Wanted<S>[], size: { width: number; height: number }): Map<S, Box> {
  const kept = new Map<S, Box>()
  const boxes: Box[] = []
  for (const { seat, rank, box: asked } of [...wanted].sort((a, b) => b.rank - a.rank)) {
    const box = rank >= KEPT_WHOLE && within(asked, size) ? pushed(asked, size) : asked
    if (!within(box, size) || boxes.some((other) => overlap(box, other))) continue
    boxes.push(box)
    kept.set(seat, box)
  }
  return kept
}
