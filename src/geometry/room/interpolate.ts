/** Monotone cubic interpolation (Fritsch and Carlson 1980): smooth, and never beyond the values it runs through. */

/** Slopes at the knots. `x` increases; at least two knots. */
function slopes(x: number[], y: number[]): number[] {
  const n = x.length
  const secant = (i: number): number => (y[i + 1]! - y[i]!) / (x[i + 1]! - x[i]!)
  const m = [secant(0)]
  for (let i = 1; i < n - 1; i++) {
    const a = secant(i - 1)
    const b = secant(i)
    const h0 = x[i]! - x[i - 1]!
    const h1 = x[i + 1]! - x[i]!
    const w1 = 2 * h1 + h0
    const w2 = h1 + 2 * h0
    m.push(a * b <= 0 ? 0 : (w1 + w2) / (w1 / a + w2 / b))
  }
  m.push(secant(n - 2))
  return m
}

/** A function through the knots; outside them it keeps the end's value. One knot gives a constant. */
export function monotoneCubic(x: number[], y: number[]): (at: number) => number {
  if (x.length === 1) return () => y[0]!
  const m = slopes(x, y)
  const last = x.length - 1
  return (at) => {
    if (at <= x[0]!) return y[0]!
    if (at >= x[last]!) return y[last]!
    let i = 0
    while (at > x[i + 1]!) i++
    const h = x[i + 1]! - x[i]!
    const t = (at - x[i]!) / h
    const u = 1 - t
    const bend = t * u * h * (u * m[i]! - t * m[i + 1]!)
    return (1 + 2 * t) * u * u * y[i]! + t * t * (3 - 2 * t) * y[i + 1]! + bend
  }
}
