/**
 * Limits and margins for three regions, each figure with the document it stands in. They are a start: whoever plans is
 * the one who knows which codes hold on the site, and every figure can be changed (the basis is then called custom).
 */
import type { Basis } from './types'

const PRACTICE = 'common practice, no source'
const MEMORY = 'value from memory, verify before relying on it'

type Figures = Omit<Basis, 'name' | 'sources'>

/** What bridge crews do everywhere, whatever the code. */
const TRADE: Pick<
  Figures,
  | 'marginSide'
  | 'bodyRadius'
  | 'minTieBackAngle'
  | 'minLoopsEngaged'
  | 'minLoopsBeside'
  | 'minBarDiameter'
  | 'boltEdge'
  | 'plateThickness'
  | 'eyeOffset'
  | 'maxSlope'
> = {
  marginSide: 0.3,
  bodyRadius: 0.3,
  minTieBackAngle: 45,
  minLoopsEngaged: 4,
  minLoopsBeside: 2,
  minBarDiameter: 0.0127,
  boltEdge: 0.0762,
  plateThickness: 0.00635,
  eyeOffset: { low: 1.524, high: 2.1336 },
  maxSlope: 15,
}

const TRADE_SOURCES: Record<string, string> = {
  marginSide: PRACTICE,
  bodyRadius: PRACTICE,
  minTieBackAngle: `${PRACTICE}: 45 degrees or more from the vertical`,
  minLoopsEngaged: `${PRACTICE}: at least 4 loops on the tube`,
  minLoopsBeside: `${PRACTICE}: at least 2 loops on either side`,
  minBarDiameter: `${PRACTICE}: No. 4 bar, 1/2 in`,
  boltEdge: `${PRACTICE}: a bolt nearer an edge than 3 in needs a plate`,
  plateThickness: `${PRACTICE}: steel plate of 1/4 in or more`,
  eyeOffset: `${PRACTICE}: 5 to 7 ft, more for longer spans`,
  maxSlope: 'EN 795:2012 type C, flexible anchor line, at most 15 degrees (read in secondary sources)',
}

const US: Basis = {
  name: 'us',
  ...TRADE,
  safetyFactor: 2,
  maxArrestForce: 8_000,
  maxFreeFall: 1.8288,
  maxDeceleration: 1.0668,
  marginBelow: 0.9144,
  sources: {
    ...TRADE_SOURCES,
    safetyFactor: 'OSHA 29 CFR 1926.502(d)(8): safety factor of at least two',
    maxArrestForce: 'OSHA 29 CFR 1926.502(d)(16)(ii): 1,800 lbf (8 kN) with a body harness',
    maxFreeFall: 'OSHA 29 CFR 1926.502(d)(16)(iii): 6 ft (1.8 m)',
    maxDeceleration: 'OSHA 29 CFR 1926.502(d)(16)(iv): 3.5 ft (1.07 m), lifeline elongation not included',
    marginBelow:
      'OSHA Technical Manual, section V chapter 4: 2 to 3 ft (read in a secondary source); 3 ft is taken',
  },
}

const CA: Basis = {
  name: 'ca',
  ...TRADE,
  safetyFactor: 2,
  maxArrestForce: 6_000,
  maxFreeFall: 1.8,
  maxDeceleration: 1.2,
  marginBelow: 1,
  sources: {
    ...TRADE_SOURCES,
    safetyFactor:
      'Quebec Safety Code for the construction industry, S-2.1 r.4, s. 2.10.15: anchor of twice the maximum arresting force',
    maxArrestForce:
      'CSA Z259.11-05 class E4, wet or frozen: 6 kN (as quoted in the Alberta OHS Code Explanation Guide, s. 142.3)',
    maxFreeFall: `provincial codes, 1.8 m: ${MEMORY}`,
    maxDeceleration: `CSA Z259.11-05 class E4, 1.2 m: ${MEMORY}`,
    marginBelow: `${PRACTICE}; CSA Z259.16 governs where it applies`,
  },
}

const EU: Basis = {
  name: 'eu',
  ...TRADE,
  safetyFactor: 2,
  maxArrestForce: 6_000,
  maxFreeFall: 2,
  maxDeceleration: 1.75,
  marginBelow: 1,
  sources: {
    ...TRADE_SOURCES,
    safetyFactor: `${PRACTICE}: strength twice the demand`,
    maxArrestForce: `EN 355, 6 kN with 100 kg: ${MEMORY}`,
    maxFreeFall: `EN 355, a lanyard with its absorber is at most 2.0 m long; taken as the free fall: ${MEMORY}`,
    maxDeceleration:
      'EN 355, absorber elongation of at most 1.75 m (as quoted in the Alberta OHS Code Explanation Guide, s. 142.3)',
    marginBelow: `EN 363 and makers' documentation, 1 m: ${MEMORY}`,
  },
}

const PRESETS = { us: US, ca: CA, eu: EU }

export type PresetName = keyof typeof PRESETS

/** A fresh copy of a region's limits and margins, SI units. */
export function basisPreset(name: PresetName): Basis {
  return structuredClone(PRESETS[name])
}
