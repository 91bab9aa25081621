/**
 * One elastic catenary segment (Irvine 1981, Cable Structures, eq. 2.21 ff.; mechanics section 2):
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

/** End-to-end distances of a segment, m, and their derivatives with V and L at constant H. */
export interface SegmentSpan {
  dx: number
  dz: number
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

/** dx and dz of a segment. Signs: dx along the line, dz up. */
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

/** Tension at the first end, N. */
export const tensionAtStart = (s: Segment): number => Math.hypot(s.H, s.V)

/** Tension at the far end, N. */
export const tensionAtEnd = (s: Segment, w: number): number => Math.hypot(s.H, s.V - w * s.L)

/** The point of a segment at unstretched length p from its first end: distances from that end, m. */
export function pointAt(s: Segment, p: number, EA: number, w: number): SegmentSpan {
  return segmentSpan({ H: s.H, V: s.V, L: p }, EA, w)
}
