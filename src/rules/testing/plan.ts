/** A small plan for the tests of the rules: every figure made up, only what rules read filled in. */
import type { Plan } from '../../plan/types'

export const row = {
  id: 'A',
  first: 0.1,
  spacing: 0.3,
  count: 60,
  offset: 0,
  barDiameter: 0.0127,
  yieldStress: 414e6,
  height: 0.15,
}

export const girder = {
  id: 'G1',
  name: 'Girder 1',
  start: [0, 0, 18] as [number, number, number],
  end: [18, 0, 18] as [number, number, number],
  material: 'concrete' as const,
  section: {
    topWidth: 1.07,
    topThickness: 0.13,
    webThickness: 0.18,
    bottomWidth: 0.66,
    bottomThickness: 0.2,
    depth: 1.83,
  },
  loops: [row],
}

const source = 'example figures'
export const post = {
  kind: 'stanchion' as const,
  id: 'post',
  name: 'post',
  source,
  height: 1.067,
  headStiffness: 120e3,
  headCapacity: 26700,
  axialCapacity: 89e3,
  mass: 19,
}
export const bracket = {
  kind: 'bracket' as const,
  id: 'brk',
  name: 'bracket',
  source,
  tubeLength: 1,
  boltsAlong: 0.3,
  boltsAcross: 0.3,
  upliftCapacity: 53e3,
}
export const strap = {
  kind: 'tie-back' as const,
  id: 'strap',
  name: 'strap',
  source,
  length: 6.1,
  wrapLength: 0.4,
  stiffness: 250e3,
  breakingStrength: 62e3,
}
export const rope = {
  kind: 'wire-rope' as const,
  id: 'rope',
  name: 'rope',
  source,
  diameter: 0.0095,
  construction: '7x19',
  breakingStrength: 64050,
  axialStiffness: { low: 2.6e6, high: 3.9e6 },
  massPerMetre: 0.362,
  thermalExpansion: 1.2e-5,
  termination: 0.8,
}
export const absorber = {
  kind: 'line-absorber' as const,
  id: 'abs',
  name: 'line absorber',
  source,
  onset: { low: 8600, high: 9400 },
  full: { low: 10800, high: 12000 },
  maxExtension: 1.07,
  breakingStrength: 66700,
  length: 0.46,
}
export const lanyard = {
  kind: 'connector' as const,
  id: 'lan',
  name: 'lanyard 4 ft',
  source,
  type: 'lanyard' as const,
  length: 1.2,
  stiffness: 60e3,
  plateau: { low: 3200, high: 4700 },
  maxExtension: 1.07,
  maxForce: 8000,
  ratedFreeFall: 1.83,
  ratedMass: { low: 59, high: 140 },
}
export const clamp = {
  kind: 'hardware' as const,
  id: 'clamp',
  name: 'wire-rope clamp',
  source,
  breakingStrength: 64e3,
  length: 0.14,
}

export const stanchions = [
  { id: 'S1', role: 'end' as const, station: 2.05, offset: 0, part: 'post', bracket: 'brk' },
  { id: 'S2', role: 'end' as const, station: 14.05, offset: 0, part: 'post', bracket: 'brk' },
]

/** A plan that fits the facts; only what rules read is filled in. */
export function testPlan(units: 'us' | 'si' = 'si'): Plan {
  return {
    format: 'fallroom-plan',
    version: 1,
    title: 'Test',
    units,
    basis: {
      name: 'us',
      safetyFactor: 2,
      maxArrestForce: 8000,
      maxFreeFall: 1.83,
      maxDeceleration: 1.07,
      marginBelow: 0.61,
      marginSide: 0.3,
      bodyRadius: 0.3,
      minTieBackAngle: 45,
      minLoopsEngaged: 3,
      minLoopsBeside: 1,
      minBarDiameter: 0.0127,
      boltEdge: 0.15,
      plateThickness: 0.0064,
      eyeOffset: { low: 0.3, high: 2.1 },
      maxSlope: 5,
      maxSpan: 12.5,
      sources: { minTieBackAngle: 'common practice', safetyFactor: 'the clause', maxSpan: 'the leaflet' },
    },
    girders: [girder],
    lines: [
      {
        id: 'L1',
        name: 'Line 1',
        girder: 'G1',
        stanchions,
        tieBacks: [
          {
            id: 'T1',
            stanchion: 'S1',
            part: 'strap',
            strapLoop: { row: 'A', index: 2 },
            tensionerLoop: { row: 'A', index: 1 },
          },
        ],
        wireRope: 'rope',
        absorber: 'abs',
        absorberAt: 'end',
        hardware: ['clamp'],
        pretension: 4450,
        pretensionTolerance: 0.1,
        installTemperature: 15,
        serviceTemperature: { low: -15, high: 40 },
        workersAtOnce: 1,
      },
    ],
    workers: [
      {
        id: 'W1',
        name: 'Worker 1',
        line: 'L1',
        mass: 100,
        dRingHeight: 1.5,
        harnessStretch: 0.3,
        connector: 'lan',
      },
    ],
    obstacles: [],
    parts: [rope, absorber, lanyard, post, bracket, strap, clamp],
    records: [
      {
        kind: 'rescue-plan',
        id: 'R1',
        at: '2026-01-01T08:00:00Z',
        by: 'A',
        line: 'L1',
        method: 'raise from the deck',
        gear: 'winch',
        people: 2,
        minutes: 10,
      },
    ],
  }
}
