/** The lanyard and where it is hooked, as things to grab: free fall and total fall of one worker on a fixed point. */
import type { ConnectorPart, Worker } from '../../plan/types'
import { fallAtStanchion, freeFall } from '../../solver/fall-energy'

/** What of a worker a fall depends on. */
type Falling = Pick<Worker, 'mass' | 'dRingHeight' | 'harnessStretch'>

export interface LanyardState {
  /** Length of the lanyard and height of the hook above the feet, m. */
  length: number
  hook: number
  freeFall: number
  /** Connector extension, m, and force on the body, N; null where the fall could not be computed. */
  extension: number | null
  force: number | null
  ranOut: boolean
  /** From standing to the lowest point, and with the margin, m. */
  totalFall: number | null
  clearance: number | null
}

/** A fall beside a stanchion, where the line does not give, so that the lanyard alone is seen; low plateau. */
export function lanyardAt(
  worker: Falling,
  connector: ConnectorPart,
  marginBelow: number,
  length: number,
  hook: number,
): LanyardState {
  const h = freeFall('lanyard', length, worker.dRingHeight, hook)
  const fall = fallAtStanchion({
    mass: worker.mass,
    count: 1,
    freeFall: h,
    connector: {
      stiffness: connector.stiffness,
      plateau: connector.plateau.low,
      maxExtension: connector.maxExtension,
    },
  })
  if (!fall.ok) {
    return {
      length,
      hook,
      freeFall: h,
      extension: null,
      force: null,
      ranOut: false,
      totalFall: null,
      clearance: null,
    }
  }
  const { extension, arrestForce, ranOut } = fall.value
  const totalFall = h + extension + worker.harnessStretch
  return {
    length,
    hook,
    freeFall: h,
    extension,
    force: arrestForce,
    ranOut,
    totalFall,
    clearance: totalFall + marginBelow,
  }
}

/** Against the height of the hook, from the feet to above the head, for the plot. */
export function lanyardCurve(
  worker: Falling,
  connector: ConnectorPart,
  marginBelow: number,
  length: number,
  steps = 46,
): LanyardState[] {
  return Array.from({ length: steps }, (_, i) =>
    lanyardAt(worker, connector, marginBelow, length, (2.25 * i) / (steps - 1)),
  )
}

/** `ground` is the room there, m; `length` writes a length. */
export function lanyardSentence(
  s: LanyardState,
  ground: number,
  length: (m: number) => string = (m) => `${m.toFixed(2)} m`,
  below = 'the ground',
): string {
  const where = s.hook < 0.3 ? 'Hooked at the feet' : s.hook < 1.2 ? 'Hooked at hip height' : 'Hooked high'
  const fall = `a lanyard of ${length(s.length)} makes a free fall of ${length(s.freeFall)}`
  if (s.clearance === null || s.totalFall === null)
    return `${where}, ${fall}; the rest could not be computed.`
  const needs = `${where}, ${fall} and needs ${length(s.clearance)} of room under the feet.`
  if (s.ranOut) return `${needs} Its absorber is torn to its end.`
  if (s.totalFall > ground) return `${needs} The body strikes ${below}.`
  if (s.clearance > ground) return `${needs} The margin over ${below} is gone.`
  return `${needs} ${length(ground - s.clearance)} are left.`
}
