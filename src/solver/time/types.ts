/**
 * What a fall in time needs and gives (mechanics section 5). The motion is in the vertical plane of the line: x is the
 * horizontal distance along the line from the first head, developed (a line that bends in plan is laid out straight:
 * an ideal pulley turns the rope without taking tension, so nothing along the rope changes; only the sideways part of
 * the pull on the stanchion at the bend is not seen here and comes from statics). z is elevation; slopes are exact.
 */
import type { Grip } from '../../plan/types'
import type { Segment } from '../catenary'
import type { ConnectorLaw, LineModel, LineSet } from '../model'

/** Viscous damping of the rope, s: T = EA (strain + beta strain rate). */
export const ROPE_DAMPING = 20e-6
/** Longest element, m. */
export const LONGEST_ELEMENT = 0.125
/** Tension is told as the greatest mean over this time, s. */
export const MEAN_TIME = 5e-3

/** The line at rest before anybody falls: the same set's own unloaded line at its service temperature. */
export interface RestingLine {
  /** Per span: H, V at its first end, unstretched length (the absorber's extension counted in). */
  spans: Segment[]
  /** Movement of the first and last head towards the line, m. */
  headShift: readonly [number, number]
  /** What the absorber has already given in the unloaded line, m. */
  absorberExtension: number
}

export interface TimeWorker {
  /** kg */
  mass: number
  connector: ConnectorLaw
  type: 'lanyard' | 'retractable'
  /** Of the connector; of a retractable its lock-off distance, m. */
  length: number
  /** Where the connector is tied to the rope: span from 0, and horizontal distance from the first head, m. */
  span: number
  x: number
  /** Elevation of the walking surface there, m. */
  surface: number
  dRingHeight: number
  harnessStretch: number
  marginBelow: number
  /** How much later than the first worker this one's connector would come taut on the unloaded line, s. */
  delay?: number
}

export interface TimeFallInput {
  model: LineModel
  set: LineSet
  grip: Grip
  line: RestingLine
  workers: TimeWorker[]
  /** In turn: the next falls when the last has come to rest. Absent: together, each with its own delay. */
  order?: 'together' | 'in-turn'
}

export interface TimeFallOptions {
  /** Keep the whole motion for the picture. Absent: figures only. */
  history?: boolean
  /** How long to go on past the lowest point, s. Absent: 3 with history, else just until the peaks are past. */
  after?: number
  /** Time between pictures, s. */
  frame?: number
  /** Longest element, m (at most 0.125), and the part of the longest stable step, both for checks. */
  element?: number
  step?: number
  /** Called every few thousand steps with an estimate from 0 to 1. */
  progress?: (done: number) => void
  /** Asked every few thousand steps; true stops the run. */
  cancelled?: () => boolean
  /** Damping against the motion itself, 1/s; only to let a line come to rest. */
  drag?: number
}

/** One body's fall. */
export interface WorkerFall {
  freeFall: number
  /** Greatest force on the body, N. */
  arrestForce: number
  /** Greatest elastic and torn together, m. */
  connectorExtension: number
  connectorTorn: number
  connectorRanOut: boolean
  /** Greatest drop of the point of attachment below the unloaded line, m. */
  lineDrop: number
  /** From standing to the lowest point, harness stretch included, m. */
  totalFall: number
  /** totalFall and the margin below: room needed under the walking surface, m. */
  clearance: number
  /** Elevation of the D-ring's lowest point, m, and when, s. */
  lowest: number
  lowestAt: number
  /** Tied to a stanchion rather than the rope, for it stands within reach of one. */
  atStanchion: boolean
  /** Torn from the walking surface by the line that another fall pulled down. */
  pulledOff: boolean
}

/** Greatest means over 5 ms of the rope's pull on one head, N; along and down need not be at the same instant. */
export interface HeadPull {
  /** Magnitude; of an end head what its spring carries, of the others the difference of both sides. */
  along: number
  down: number
  /** The instant of the greatest resultant. */
  together: { along: number; down: number }
}

/** Energy by kind, J: everything at the start is the zero of potential. */
export interface Energies {
  kinetic: number
  potential: number
  elastic: number
  /** In rope, absorber, connectors, drag: everything that does not come back. */
  dissipated: number
}

export interface TimeFall {
  /** Greatest mean over 5 ms in any element, N. */
  tension: number
  tensionAt: { time: number; element: number }
  absorberExtension: number
  absorberRanOut: boolean
  workers: WorkerFall[]
  heads: HeadPull[]
  /** Greatest gap of the energy balance over the energy of the fall. */
  energyError: number
  energies: Energies
  steps: number
  /** s of motion computed. */
  time: number
  /** When the first swing's figures were closed, s: every body had passed its lowest point and its late peaks. */
  closedAt: number
  /** The same for all of the motion that was computed: later swings can tear a connector further. */
  whole: { tension: number; absorberExtension: number; workers: WorkerFall[] }
  history: FallHistory | null
}

/** The motion, for the picture: frame f of node i stands at [f * nodes + i]. All arrays can be transferred. */
export interface FallHistory {
  frames: number
  nodes: number
  workers: number
  times: Float64Array
  x: Float32Array
  z: Float32Array
  /** Mean tension of element i (between nodes i and i + 1) over the 5 ms before, N: [f * (nodes - 1) + i]. */
  tension: Float32Array
  workerX: Float32Array
  workerZ: Float32Array
  connectorForce: Float32Array
  /** Elastic and torn together, m; negative where slack. */
  connectorExtension: Float32Array
  /** Movement of the first and last head towards the line, m: [2 f], [2 f + 1]. */
  headShift: Float32Array
  absorberExtension: Float32Array
  /** kinetic, potential, elastic, dissipated: [4 f ...]. */
  energies: Float64Array
  /** Node that each worker's connector is tied to; -1: the stanchion. */
  attachedNode: Int32Array
}
