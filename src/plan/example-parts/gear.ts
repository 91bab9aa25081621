import type { BracketPart, HardwarePart, StanchionPart, TieBackPart } from '../types'
import { EXAMPLE_FIGURES as source } from './source'

const stanchions: StanchionPart[] = [
  {
    id: 'stanchion-42in',
    name: 'Stanchion 42 in (1.07 m)',
    source,
    kind: 'stanchion',
    height: 1.0668,
    headStiffness: 120_000,
    headCapacity: 26_700,
    axialCapacity: 89_000,
    mass: 19,
  },
  {
    id: 'stanchion-48in',
    name: 'Stanchion 48 in (1.22 m), heavy',
    source,
    kind: 'stanchion',
    height: 1.2192,
    headStiffness: 150_000,
    headCapacity: 33_400,
    axialCapacity: 105_000,
    mass: 26,
  },
  {
    id: 'stanchion-60in',
    name: 'Stanchion 60 in (1.52 m), heavy',
    source,
    kind: 'stanchion',
    height: 1.524,
    headStiffness: 95_000,
    headCapacity: 31_100,
    axialCapacity: 98_000,
    mass: 31,
  },
]

const brackets: BracketPart[] = [
  {
    id: 'bracket-40in',
    name: 'Loop bracket, 40 in (1.0 m) tube',
    source,
    kind: 'bracket',
    tubeLength: 1.016,
    boltsAlong: 0.3048,
    boltsAcross: 0.3048,
    upliftCapacity: 53_000,
  },
  {
    id: 'bracket-52in',
    name: 'Loop bracket, 52 in (1.3 m) tube',
    source,
    kind: 'bracket',
    tubeLength: 1.3208,
    boltsAlong: 0.4064,
    boltsAcross: 0.3048,
    upliftCapacity: 71_000,
  },
]

const tieBacks: TieBackPart[] = [
  {
    id: 'tie-back-2in',
    name: 'Tie-back strap and tensioner, 2 in (50 mm), 20 ft (6.1 m)',
    source,
    kind: 'tie-back',
    length: 6.096,
    wrapLength: 0.4,
    stiffness: 250_000,
    breakingStrength: 53_400,
  },
  {
    id: 'tie-back-3in',
    name: 'Tie-back strap and tensioner, 3 in (75 mm), 20 ft (6.1 m)',
    source,
    kind: 'tie-back',
    length: 6.096,
    wrapLength: 0.4,
    stiffness: 380_000,
    breakingStrength: 80_000,
  },
]

type Hardware = [id: string, name: string, breakingStrength: number, length: number]

const HARDWARE: Hardware[] = [
  ['shackle-12', 'Anchor shackle 1/2 in (13 mm)', 88_000, 0.06],
  ['shackle-16', 'Anchor shackle 5/8 in (16 mm)', 142_000, 0.08],
  ['tensioner', 'Tensioner with strap and indicator', 71_000, 0.75],
  ['turnbuckle', 'Turnbuckle 5/8 in (16 mm)', 93_000, 0.55],
  ['rope-clamp', 'In-line wire-rope clamp', 64_000, 0.14],
]

const hardware = HARDWARE.map(
  ([id, name, breakingStrength, length]): HardwarePart => ({
    id,
    name,
    source,
    kind: 'hardware',
    breakingStrength,
    length,
  }),
)

export const exampleGear = [...stanchions, ...brackets, ...tieBacks, ...hardware]
