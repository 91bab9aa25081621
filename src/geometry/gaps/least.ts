/** The least of a convex function. */

/** To what its place is found, m. */
const CLOSE = 1e-4
const SHRINK = (Math.sqrt(5) - 1) / 2

/** Golden-section search for the place of the least of a convex function between two bounds. */
export function leastOf(value: (x: number) => number, from: number, to: number): number {
  let a = from
  let b = to
  let p = b - SHRINK * (b - a)
  let q = a + SHRINK * (b - a)
  let vp = value(p)
  let vq = value(q)
  while (b - a > CLOSE) {
    if (vp < vq) {
      b = q
      q = p
      vq = vp
      p = b - SHRINK * (b - a)
      vp = value(p)
    } else {
      a = p
      p = q
      vp = vq
      q = a + SHRINK * (b - a)
      vq = value(q)
    }
  }
  return (a + b) / 2
}
