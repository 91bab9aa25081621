/** Fields of two records of the same thing that differ, as leaves with a path and, where known, a unit. */

export interface FieldChange {
  /** As 'station' or 'section.depth'. */
  field: string
  before: unknown
  after: unknown
  /** A unit that `formatQuantity` knows; null for texts and references. */
  unit: string | null
}

const UNITS: Record<string, string> = {
  station: 'm',
  offset: 'm',
  plate: 'm',
  pretension: 'N',
  pretensionTolerance: 'fraction',
  installTemperature: 'degC',
  serviceTemperature: 'degC',
  workersAtOnce: 'count',
  mass: 'kg',
  dRingHeight: 'm',
  harnessStretch: 'm',
  elevation: 'm',
  margin: 'm',
  width: 'm',
  clearHeight: 'm',
  depth: 'm',
  topWidth: 'm',
  topThickness: 'm',
  webThickness: 'm',
  bottomWidth: 'm',
  bottomThickness: 'm',
  first: 'm',
  spacing: 'm',
  count: 'count',
  barDiameter: 'm',
  yieldStress: 'Pa',
  height: 'm',
  diameter: 'm',
  breakingStrength: 'N',
  axialStiffness: 'N',
  massPerMetre: 'kg/m',
  thermalExpansion: '1/degC',
  termination: 'fraction',
  onset: 'N',
  full: 'N',
  maxExtension: 'm',
  length: 'm',
  plateau: 'N',
  maxForce: 'N',
  ratedFreeFall: 'm',
  ratedMass: 'kg',
  headStiffness: 'N/m',
  headCapacity: 'N',
  axialCapacity: 'N',
  tubeLength: 'm',
  boltsAlong: 'm',
  boltsAcross: 'm',
  upliftCapacity: 'N',
  wrapLength: 'm',
  safetyFactor: 'ratio',
  maxArrestForce: 'N',
  maxFreeFall: 'm',
  maxDeceleration: 'm',
  marginBelow: 'm',
  marginSide: 'm',
  bodyRadius: 'm',
  minTieBackAngle: 'deg',
  minLoopsEngaged: 'count',
  minLoopsBeside: 'count',
  minBarDiameter: 'm',
  boltEdge: 'm',
  plateThickness: 'm',
  eyeOffset: 'm',
  maxSlope: 'deg',
  maxSpan: 'm',
  barSize: 'm',
  turn: 'deg',
}

/** The unit of a path's last name that has one: the ends of a range take the range's. */
function unitOf(path: readonly string[]): string | null {
  const known = [...path].reverse().find((name) => Object.hasOwn(UNITS, name))
  return known === undefined ? null : (UNITS[known] ?? null)
}

const isPlain = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Leaves that differ; `skip` names fields that are compared on their own. */
export function fieldChanges(
  before: unknown,
  after: unknown,
  skip: ReadonlySet<string> = new Set(),
  path: readonly string[] = [],
): FieldChange[] {
  if (isPlain(before) && isPlain(after)) {
    const names = new Set([...Object.keys(before), ...Object.keys(after)])
    return [...names]
      .filter((n) => !skip.has(n))
      .flatMap((n) => fieldChanges(before[n], after[n], new Set(), [...path, n]))
  }
  if (JSON.stringify(before) === JSON.stringify(after)) return []
  return [{ field: path.join('.'), before, after, unit: unitOf(path) }]
}
