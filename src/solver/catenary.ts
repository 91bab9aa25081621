/**
 * One elastic catenary segment (Irvine 1981, Cable Structures; mechanics section 2):
 *
 *   dx = H L/EA + (H/w) [asinh(V/H) - asinh((V - wL)/H)]
 *   dz = -[ (V^2 - (V - wL)^2) / (2 EA w) + ( sqrt(H^2+V^2) - sqrt(H^2+(V-wL)^2) ) / w ]
 *
 * H: horizontal component of tension, N, > 0. V: vertical component at the first end, N, positive where the support
 * carries the rope. L: unstretched length, m. The forms below hold for w -> 0 too: no difference of nearly equal
 * numbers is ever taken.
 */

export interface Segment {
  H: number
  V: number
  L: number
}

/** End-to-end distances of a segment, m: dx along the line, dz up. */
export interface SegmentSpan {
  dx: number
  dz: number
}

/** The distances with their derivatives by H, V (m/N) and L (m/m), and the tension at both ends, N. */
export interface SegmentTangent extends SegmentSpan {
  xH: number
  xV: number
  xL: number
  zH: number
  zV: number
  zL: number
  /** Vertical component at the far end, N, V - wL. */
  E: number
  Ta: number
  Tb: number
}

/** asinh(a) - asinh(b) over (a - b): the mean slope of asinh, without cancellation. */
function asinhSlope(a: number, b: number): number {
  if (a + b < 0) return asinhSlope(-b, -a)
  const sa = Math.sqrt(1 + a * a)
  const sb = Math.sqrt(1 + b * b)
  const base = b >= 0 ? b + sb : 1 / (sb - b)
  const gain = (1 + (a + b) / (sa + sb)) / base
  const u = (a - b) * gain
  return Math.abs(u) < 1e-8 ? gain * (1 - u / 2) : Math.log1p(u) / (a - b)
}

/** dx and dz of a segment. */
export function segmentSpan(s: Segment, EA: number, w: number): SegmentSpan {
  const end = s.V - w * s.L
  const sum = s.V + end
  const Ta = Math.hypot(s.H, s.V)
  const Tb = Math.hypot(s.H, end)
  return {
    dx: (s.H * s.L) / EA + s.L * asinhSlope(s.V / s.H, end / s.H),
    dz: -s.L * (sum / (2 * EA) + sum / (Ta + Tb)),
  }
}

/** (V/Ta - E/Tb) / w as L (H^2 + Ta Tb - V E) / ((Ta + Tb) Ta Tb), which holds for w = 0 too; without cancellation. */
function sineChange(H: number, V: number, E: number, Ta: number, Tb: number, L: number): number {
  const both = V * E
  const rest = both > 0 ? (H * H * (H * H + V * V + E * E)) / (Ta * Tb + both) : Ta * Tb - both
  return (L * (H * H + rest)) / ((Ta + Tb) * Ta * Tb)
}

/** A tangent whose every figure is still to be written. */
export const blankTangent = (): SegmentTangent => ({
  dx: Number.NaN,
  dz: Number.NaN,
  xH: Number.NaN,
  xV: Number.NaN,
  xL: Number.NaN,
  zH: Number.NaN,
  zV: Number.NaN,
  zL: Number.NaN,
  E: Number.NaN,
  Ta: Number.NaN,
  Tb: Number.NaN,
})

/**
 * dx, dz and all their first derivatives, written into `into`, which is returned. A study takes some hundred thousand of
 * these; new ones each time cost it a third of its time in memory tidied up, so that rounds of a solve share one.
 */
export function segmentTangent(
  H: number,
  V: number,
  L: number,
  EA: number,
  w: number,
  into: SegmentTangent = blankTangent(),
): SegmentTangent {
  const E = V - w * L
  const sum = V + E
  const Ta = Math.sqrt(H * H + V * V)
  const Tb = Math.sqrt(H * H + E * E)
  const slope = asinhSlope(V / H, E / H)
  const sines = sineChange(H, V, E, Ta, Tb, L)
  const cross = (H * L * sum) / ((Ta + Tb) * Ta * Tb)
  into.dx = (H * L) / EA + L * slope
  into.dz = -L * (sum / (2 * EA) + sum / (Ta + Tb))
  into.xH = L / EA + (slope * L) / H - sines
  into.xV = -cross
  into.xL = H / EA + H / Tb
  into.zH = cross
  into.zV = -(L / EA + sines)
  into.zL = -(E / EA + E / Tb)
  into.E = E
  into.Ta = Ta
  into.Tb = Tb
  return into
}

/**
 * Tension at the first end from the tension at the far end, for a rope that rises by dz from the first to the far
 * end. T + T^2/(2 EA) - w z is the same all along a rope that nothing but its weight acts on.
 */
export function tensionBelow(Tb: number, dz: number, EA: number, w: number): number {
  const q = Tb + (Tb * Tb) / (2 * EA) - w * dz
  return (2 * q) / (1 + Math.sqrt(1 + (2 * q) / EA))
}

/** The point of a segment at unstretched length p from its first end: distances from that end, m. */
export function pointAt(s: Segment, p: number, EA: number, w: number): SegmentSpan {
  return segmentSpan({ H: s.H, V: s.V, L: p }, EA, w)
}

/** Height above its first end at horizontal distance x from it, m, carried on past its ends; NaN where none is found. */
export function heightAt(s: Segment, x: number, EA: number, w: number): number {
  const whole = segmentSpan(s, EA, w)
  let p = (s.L * x) / whole.dx
  const t = blankTangent()
  for (let i = 0; i < 30; i++) {
    segmentTangent(s.H, s.V, p, EA, w, t)
    const step = (x - t.dx) / t.xL
    p += step
    if (Math.abs(step) <= 1e-13 * s.L) return pointAt(s, p, EA, w).dz
  }
  return Number.NaN
}
