/**
 * The equations of a rope in its plain textbook form (Irvine 1981), apart from the solver's: what a solved line must
 * satisfy. Fit for ropes with weight; nothing is solved here.
 */
import { expectClose } from './close'

/** End-to-end distances of a segment, m. */
export function plainSegment(H: number, V: number, L: number, EA: number, w: number) {
  const E = V - w * L
  const dx = (H * L) / EA + (H / w) * (Math.asinh(V / H) - Math.asinh(E / H))
  const dz = -((V * V - E * E) / (2 * EA * w) + (Math.sqrt(H * H + V * V) - Math.sqrt(H * H + E * E)) / w)
  return { dx, dz, Ta: Math.sqrt(H * H + V * V), Tb: Math.sqrt(H * H + E * E), E }
}

/** x_a(T) of mechanics section 3, m. */
export function plainAbsorber(
  law: { onset: number; full: number; maxExtension: number } | null,
  T: number,
): number {
  if (law === null) return 0
  const ramp = (law.maxExtension * (T - law.onset)) / (law.full - law.onset)
  return Math.min(Math.max(0, ramp), law.maxExtension) + Math.max(0, T - law.full) / 10e6
}

/** The slope of f at x by central differences with one Richardson step. */
export function slopeOf(f: (x: number) => number, x: number, h: number): number {
  const by = (e: number): number => (f(x + e) - f(x - e)) / (2 * e)
  return (4 * by(h / 2) - by(h)) / 3
}

interface Span {
  H: number
  V: number
  L: number
  Ta: number
  Tb: number
}

/** A free span closes between heads that have come X - moved apart, and tells its own tensions. */
export function expectSpan(s: Span, X: number, Z: number, EA: number, w: number, what: string): void {
  const at = plainSegment(s.H, s.V, s.L, EA, w)
  expectClose(at.dx, X, { abs: 1e-8 }, `${what}: dx`)
  expectClose(at.dz, Z, { abs: 1e-8 }, `${what}: dz`)
  expectClose(s.Ta, at.Ta, { rel: 1e-10 }, `${what}: tension at the first end`)
  expectClose(s.Tb, at.Tb, { rel: 1e-10 }, `${what}: tension at the far end`)
}
