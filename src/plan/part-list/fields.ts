/** The fields of each kind of part, in the order a list has them, with the SI unit each is given in. */
import type { PartKind } from '../types'

export interface PartField {
  /** Name in the plan; `low` and `high` of a range after a point. */
  key: string
  /** SI unit as `units` knows it; null: text. */
  unit: string | null
  /** May be left out. */
  optional?: true
}

const text = (key: string): PartField => ({ key, unit: null })
const number = (key: string, unit: string): PartField => ({ key, unit })
const ends = (key: string, unit: string): PartField[] => [
  number(`${key}.low`, unit),
  number(`${key}.high`, unit),
]
const optional = (fields: PartField[]): PartField[] => fields.map((f) => ({ ...f, optional: true as const }))

/** What every part has. */
export const commonFields: readonly PartField[] = [text('kind'), text('id'), text('name'), text('source')]

export const partFields: Record<PartKind, readonly PartField[]> = {
  'wire-rope': [
    number('diameter', 'm'),
    text('construction'),
    number('breakingStrength', 'N'),
    ...ends('axialStiffness', 'N'),
    number('massPerMetre', 'kg/m'),
    number('thermalExpansion', '1/degC'),
    number('termination', 'fraction'),
    ...optional([number('constructionalStretch', 'fraction')]),
  ],
  'line-absorber': [
    ...ends('onset', 'N'),
    ...ends('full', 'N'),
    number('maxExtension', 'm'),
    number('breakingStrength', 'N'),
    number('length', 'm'),
  ],
  connector: [
    text('type'),
    number('length', 'm'),
    number('stiffness', 'N/m'),
    ...ends('plateau', 'N'),
    number('maxExtension', 'm'),
    number('maxForce', 'N'),
    number('ratedFreeFall', 'm'),
    ...optional(ends('ratedMass', 'kg')),
  ],
  stanchion: [
    number('height', 'm'),
    number('headStiffness', 'N/m'),
    number('headCapacity', 'N'),
    number('axialCapacity', 'N'),
    number('mass', 'kg'),
  ],
  bracket: [
    number('tubeLength', 'm'),
    number('boltsAlong', 'm'),
    number('boltsAcross', 'm'),
    number('upliftCapacity', 'N'),
  ],
  'tie-back': [
    number('length', 'm'),
    number('wrapLength', 'm'),
    number('stiffness', 'N'),
    number('breakingStrength', 'N'),
  ],
  hardware: [number('breakingStrength', 'N'), number('length', 'm')],
}

export const partKinds = Object.keys(partFields) as PartKind[]

/** Every field that any part has, once each; a field of two kinds whose units differ keeps a column for each unit. */
export function columnsOf(kinds: readonly PartKind[]): PartField[] {
  const columns = new Map<string, PartField>()
  for (const field of [...commonFields, ...kinds.flatMap((k) => partFields[k])]) {
    columns.set(columnName(field), field)
  }
  return [...columns.values()]
}

/** Head of a column: the field and, for a number, its unit: `breakingStrength (N)`. A share has none. */
export function columnName({ key, unit }: PartField): string {
  return unit === null || unit === 'fraction' ? key : `${key} (${unit})`
}
