import type { ConnectorPart } from '../types'
import { EXAMPLE_FIGURES as source } from './source'

type Lanyard = [
  id: string,
  name: string,
  length: number,
  plateau: [number, number],
  extension: number,
  rated: number,
]

/** The range of the plateau is that of 31 published drop tests, 3.2 to 4.7 kN (Goh 2015), but for the low-force one. */
const LANYARDS: Lanyard[] = [
  ['lanyard-3ft', 'Lanyard with absorber, 3 ft (0.9 m)', 0.9144, [3_200, 4_700], 1.0668, 1.8288],
  ['lanyard-4ft', 'Lanyard with absorber, 4 ft (1.2 m)', 1.2192, [3_200, 4_700], 1.0668, 1.8288],
  ['lanyard-6ft', 'Lanyard with absorber, 6 ft (1.8 m)', 1.8288, [3_200, 4_700], 1.0668, 1.8288],
  [
    'lanyard-6ft-high',
    'Lanyard with absorber, 6 ft (1.8 m), for falls of 12 ft',
    1.83,
    [4_500, 6_000],
    1.52,
    3.66,
  ],
  ['lanyard-4ft-low', 'Lanyard with low-force absorber, 4 ft (1.2 m)', 1.2192, [2_400, 3_400], 1.2, 1.8288],
]

const lanyard = ([id, name, length, plateau, maxExtension, ratedFreeFall]: Lanyard): ConnectorPart => ({
  id,
  name,
  source,
  kind: 'connector',
  type: 'lanyard',
  length,
  stiffness: 60_000,
  plateau: { low: plateau[0], high: plateau[1] },
  maxExtension,
  maxForce: 8_000,
  ratedFreeFall,
  ratedMass: { low: 59, high: 140 },
})

type Retractable = [
  id: string,
  name: string,
  lockOff: number,
  plateau: [number, number],
  extension: number,
  rated: number,
]

const RETRACTABLES: Retractable[] = [
  ['retractable-light', 'Retractable, 6 ft (1.8 m) web', 0.6096, [2_600, 4_000], 1.0668, 0.6096],
  [
    'retractable-leading-edge',
    'Retractable for foot level, 8 ft (2.4 m) cable',
    0.6,
    [2_800, 4_400],
    1.4,
    1.83,
  ],
]

const retractable = ([
  id,
  name,
  length,
  plateau,
  maxExtension,
  ratedFreeFall,
]: Retractable): ConnectorPart => ({
  id,
  name,
  source,
  kind: 'connector',
  type: 'retractable',
  length,
  stiffness: 40_000,
  plateau: { low: plateau[0], high: plateau[1] },
  maxExtension,
  maxForce: 8_000,
  ratedFreeFall,
  ratedMass: { low: 59, high: 140 },
})

export const exampleConnectors = [...LANYARDS.map(lanyard), ...RETRACTABLES.map(retractable)]
