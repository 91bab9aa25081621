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

/** What is shown, and where; what lies off the picture is left out. Equal ranks keep their order. */
export function place<S>(wanted: readonly Wanted<S>[], size: { width: number; height: number }): Map<S, Box> {
  const kept = new Map<S, Box>()
  const boxes: Box[] = []
  for (const { seat, box } of [...wanted].sort((a, b) => b.rank - a.rank)) {
    if (!within(box, size) || boxes.some((other) => overlap(box, other))) continue
    boxes.push(box)
    kept.set(seat, box)
  }
  return kept
}
