import type { LineAbsorberPart, WireRopePart } from '../types'
import { EXAMPLE_FIGURES as source } from './source'

/** 1/degC, steel rope: value from memory. */
const thermalExpansion = 12.5e-6

type Rope = [
  id: string,
  name: string,
  diameter: number,
  strength: number,
  low: number,
  high: number,
  mass: number,
]

/** EA follows from 69 to 103 GPa on the metallic area: values from memory, which is why the range is wide. */
const SEVEN_BY_NINETEEN: Rope[] = [
  ['rope-8', 'Wire rope 5/16 in (8 mm), 7x19', 0.0079375, 43_590, 1.82e6, 2.72e6, 0.252],
  ['rope-10', 'Wire rope 3/8 in (9.5 mm), 7x19', 0.009525, 64_050, 2.62e6, 3.91e6, 0.362],
  ['rope-10-ss', 'Wire rope 3/8 in (9.5 mm), 7x19, stainless', 0.009525, 53_380, 2.5e6, 3.75e6, 0.362],
]

const SIX_BY_NINETEEN: Rope[] = [
  ['rope-11', 'Wire rope 7/16 in (11 mm), 6x19 IWRC', 0.0111125, 78_290, 3.83e6, 5.71e6, 0.49],
  ['rope-13', 'Wire rope 1/2 in (13 mm), 6x19 IWRC', 0.0127, 101_400, 5e6, 7.46e6, 0.65],
]

function ropePart(construction: string, termination: number) {
  return ([id, name, diameter, breakingStrength, low, high, massPerMetre]: Rope): WireRopePart => ({
    id,
    name,
    source,
    kind: 'wire-rope',
    diameter,
    construction,
    breakingStrength,
    axialStiffness: { low, high },
    massPerMetre,
    thermalExpansion,
    termination,
  })
}

type Absorber = [id: string, name: string, onset: [number, number], full: [number, number], extension: number]

const ABSORBERS: Absorber[] = [
  ['absorber-soft', 'Line absorber, soft', [5_800, 6_600], [8_400, 9_600], 1.2],
  ['absorber-medium', 'Line absorber, medium', [7_200, 8_000], [9_800, 11_000], 1.0668],
  ['absorber-firm', 'Line absorber, firm', [8_600, 9_400], [10_800, 12_000], 1.0668],
]

const absorberPart = ([id, name, onset, full, maxExtension]: Absorber): LineAbsorberPart => ({
  id,
  name,
  source,
  kind: 'line-absorber',
  onset: { low: onset[0], high: onset[1] },
  full: { low: full[0], high: full[1] },
  maxExtension,
  breakingStrength: 66_700,
  length: 0.46,
})

export const exampleRopes = [
  ...SEVEN_BY_NINETEEN.map(ropePart('7x19', 0.8)),
  ...SIX_BY_NINETEEN.map(ropePart('6x19 IWRC', 0.8)),
  ...ABSORBERS.map(absorberPart),
]
