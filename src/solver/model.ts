/**
 * What the solver needs to know about one line, as plain numbers: no ids, no parts, no plan. `study` builds it.
 * x is the horizontal distance along the line from the first head, z is up; SI units.
 */
import type { Grip, Range } from '../plan/types'

export const GRAVITY = 9.80665

/** Past its full extension an absorber goes on at this stiffness, N/m, so that the numbers stay honest. */
export const RUN_OUT_STIFFNESS = 10e6

export type SetName = 'soft' | 'stiff' | 'nominal'

export interface LineModel {
  /** Horizontal positions of the heads along the line, first 0, increasing, m. */
  x: number[]
  /** Elevation of the heads, m. */
  z: number[]
  massPerMetre: number
  /** 1/degC */
  thermalExpansion: number
  /** EA, N */
  axialStiffness: Range
  absorber: AbsorberFigures | null
  absorberAt: 'start' | 'end'
  pretension: number
  pretensionTolerance: number
  installTemperature: number
  serviceTemperature: Range
  /** K of the first and last head along the line, tie-back legs included, N/m. */
  endStiffness: [number, number]
  /** Mass that moves with the first and last head in a fall in time (a quarter of the stanchion's), kg. */
  endMass: [number, number]
}

export interface AbsorberFigures {
  onset: Range
  full: Range
  maxExtension: number
}

/** One end of every uncertain figure of a line: soft sags most, stiff pulls most. */
export interface LineSet {
  name: SetName
  /** EA, N */
  stiffness: number
  /** Weight of the rope, N/m. */
  weight: number
  /** Tension at the absorber's end at the install temperature, N. */
  pretension: number
  /** Free length at service temperature over free length at install temperature. */
  thermalFactor: number
  absorber: { onset: number; full: number; maxExtension: number } | null
}

/** One corner of everything uncertain. */
export interface Corner {
  grip: Grip
  line: 'soft' | 'stiff'
  connector: 'low' | 'high'
}

/** A connector at one end of its plateau. */
export interface ConnectorLaw {
  /** k, N/m */
  stiffness: number
  /** Fp, N */
  plateau: number
  maxExtension: number
}

/** A value that counts only if it converged; `why` says what did not, with the inputs, so that it can be repeated. */
export type Solved<T> = { ok: true; value: T } | { ok: false; why: string }

export const solved = <T>(value: T): Solved<T> => ({ ok: true, value })
export const unsolved = (why: string): { ok: false; why: string } => ({ ok: false, why })

/** The figures of one set (mechanics section 1): which end of each range hurts. */
export function lineSet(model: LineModel, name: SetName): LineSet {
  const pick = { soft: 0, nominal: 0.5, stiff: 1 }[name]
  const at = (r: Range): number => r.low + (r.high - r.low) * pick
  const temperature =
    name === 'soft'
      ? model.serviceTemperature.high
      : name === 'stiff'
        ? model.serviceTemperature.low
        : model.installTemperature
  const tolerance = { soft: -1, nominal: 0, stiff: 1 }[name] * model.pretensionTolerance
  return {
    name,
    stiffness: at(model.axialStiffness),
    weight: model.massPerMetre * GRAVITY,
    pretension: model.pretension * (1 + tolerance),
    thermalFactor: 1 + model.thermalExpansion * (temperature - model.installTemperature),
    absorber: model.absorber && {
      onset: at(model.absorber.onset),
      full: at(model.absorber.full),
      maxExtension: model.absorber.maxExtension,
    },
  }
}
