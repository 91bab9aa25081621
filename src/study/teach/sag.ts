/** The sag as something to grab: rope tension against sag angle for one arrest force at mid-span. */
import { solveLoadedChain } from '../../solver/loaded'

export interface SagState {
  /** Sag angle of each leg against the horizontal, degrees, and the sag, m. */
  angle: number
  sag: number
  /** Greatest tension, N, and over the arrest force. */
  tension: number
  ratio: number
}

/** A rope whose stretch does not matter, so that the angle alone decides; its weight is left out. N, N/m. */
const STIFF = 1e13
const LIGHT = 1e-9

/** The published marks: about 2:1 at 15 degrees and 6:1 at 5 (OSHA 1926 Subpart M Appendix C). */
export const PUBLISHED = [
  { angle: 15, ratio: 2, text: '15 degrees: about 2 to 1' },
  { angle: 5, ratio: 6, text: '5 degrees: about 6 to 1' },
] as const

/** A level span (m) of rope just long enough to make the angle, under one arrest force (N). Null: not converged. */
export function sagAt(span: number, force: number, angle: number): SagState | null {
  const a = (angle * Math.PI) / 180
  const chain = {
    X: [span],
    Z: [0],
    EA: STIFF,
    w: LIGHT,
    give: [0, 0] as [number, number],
    heldAt: [0, 0] as [number, number],
    absorber: null,
    absorberAt: 'end' as const,
    rope: span / Math.cos(a),
  }
  const state = solveLoadedChain(chain, 0, span / 2, force, { H: force / (2 * Math.tan(a)), others: [] })
  if (!state) return null
  const tension = Math.max(state.at.first.Ta, state.at.second.Tb)
  return { angle, sag: -state.height, tension, ratio: tension / force }
}

/** From nearly straight to steep, for the plot; what did not converge is left out. */
export function sagCurve(span: number, force: number, from = 1.5, to = 35, steps = 68): SagState[] {
  const angles = Array.from({ length: steps }, (_, i) => from + ((to - from) * i) / (steps - 1))
  return angles.flatMap((angle) => sagAt(span, force, angle) ?? [])
}

export function sagSentence(s: SagState): string {
  const times = s.ratio.toFixed(1)
  if (s.angle < 5)
    return `Nearly straight: the rope pulls ${times} times as hard as the worker does. A tight line is not a strong line.`
  if (s.angle < 15) return `A shallow sag: the rope pulls ${times} times as hard as the worker does.`
  return `A deep sag: the rope pulls ${times} times as hard as the worker does, and the fall needs more room.`
}
