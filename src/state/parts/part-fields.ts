/** The figures of every kind of part, in the order and with the words and units in which people read them. */
import type { Part, PartKind } from '../../plan/types'

export interface PartFigure {
  /** Path in the part: 'length', or 'plateau.low' of a range. */
  key: string
  label: string
  unit: string
  /** May be left out. */
  optional?: boolean
}

const range = (key: string, label: string, unit: string, optional = false): PartFigure[] => [
  { key: `${key}.low`, label: `${label}, low`, unit, optional },
  { key: `${key}.high`, label: `${label}, high`, unit, optional },
]
const one = (key: string, label: string, unit: string, optional = false): PartFigure => ({
  key,
  label,
  unit,
  optional,
})

export const partFigures: Record<PartKind, PartFigure[]> = {
  'wire-rope': [
    one('diameter', 'Diameter', 'm'),
    one('breakingStrength', 'Breaking strength', 'N'),
    ...range('axialStiffness', 'Axial stiffness EA', 'N'),
    one('massPerMetre', 'Mass', 'kg/m'),
    one('thermalExpansion', 'Thermal expansion', '1/degC'),
    one('termination', 'Efficiency of its end', 'fraction'),
    one('constructionalStretch', 'Constructional stretch, new', 'fraction', true),
  ],
  'line-absorber': [
    ...range('onset', 'Force at onset', 'N'),
    ...range('full', 'Force at full extension', 'N'),
    one('maxExtension', 'Greatest extension', 'm'),
    one('breakingStrength', 'Breaking strength', 'N'),
    one('length', 'Length', 'm'),
  ],
  connector: [
    one('length', 'Length, or lock-off distance', 'm'),
    one('stiffness', 'Stiffness', 'N/m'),
    ...range('plateau', 'Tearing force', 'N'),
    one('maxExtension', 'Greatest torn length', 'm'),
    one('maxForce', 'Greatest arrest force told', 'N'),
    one('ratedFreeFall', 'Rated free fall', 'm'),
    ...range('ratedMass', 'Rated mass', 'kg', true),
  ],
  stanchion: [
    one('height', 'Rope above the girder top', 'm'),
    one('headStiffness', 'Stiffness at the head', 'N/m'),
    one('headCapacity', 'Capacity at the head', 'N'),
    one('axialCapacity', 'Axial capacity', 'N'),
    one('mass', 'Mass', 'kg'),
  ],
  bracket: [
    one('tubeLength', 'Length of the tube', 'm'),
    one('boltsAlong', 'Bolts apart, along', 'm'),
    one('boltsAcross', 'Bolts apart, across', 'm'),
    one('upliftCapacity', 'Uplift capacity', 'N'),
  ],
  'tie-back': [
    one('length', 'Length', 'm'),
    one('wrapLength', 'One turn on the spool', 'm'),
    one('stiffness', 'Stiffness per unit strain', 'N'),
    one('breakingStrength', 'Breaking strength', 'N'),
  ],
  hardware: [one('breakingStrength', 'Breaking strength', 'N'), one('length', 'Length', 'm')],
}

export const partKindWord: Record<PartKind, string> = {
  'wire-rope': 'Wire rope',
  'line-absorber': 'Line absorber',
  connector: 'Connector',
  stanchion: 'Stanchion',
  bracket: 'Bracket',
  'tie-back': 'Tie-back strap',
  hardware: 'Hardware',
}

export const partKinds = Object.keys(partKindWord) as PartKind[]

/** The figure at a path; undefined where the part has none. */
export function figureOf(part: Part, key: string): number | undefined {
  const value = key
    .split('.')
    .reduce<unknown>((at, step) => (at as Record<string, unknown> | undefined)?.[step], part)
  return typeof value === 'number' ? value : undefined
}

/** A copy of a part with one figure changed. */
export function withFigure<P extends object>(part: P, key: string, value: number): P {
  const [head = key, end] = key.split('.')
  const record = part as Record<string, unknown>
  if (!end) return { ...part, [head]: value }
  return { ...part, [head]: { ...(record[head] as object | undefined), [end]: value } }
}
