/** A small plan and its facts for the tests of the rules: every figure made up, every rule met, easy to bend. */
import type { Plan } from '../../plan/types'
import { straightCapacity } from '../../solver/bracket-capacity'
import type { Demand, LegFacts, LineFacts, RuleContext, StanchionFacts, TieBackFacts } from '../context'

const row = {
  id: 'A',
  first: 0.1,
  spacing: 0.3,
  count: 60,
  offset: 0,
  barDiameter: 0.0127,
  yieldStress: 414e6,
  height: 0.15,
}

const girder = {
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
const post = {
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
const bracket = {
  kind: 'bracket' as const,
  id: 'brk',
  name: 'bracket',
  source,
  tubeLength: 1,
  boltsAlong: 0.3,
  boltsAcross: 0.3,
  upliftCapacity: 53e3,
}
const strap = {
  kind: 'tie-back' as const,
  id: 'strap',
  name: 'strap',
  source,
  length: 6.1,
  wrapLength: 0.4,
  stiffness: 250e3,
  breakingStrength: 62e3,
}
const rope = {
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
const absorber = {
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
const lanyard = {
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
const clamp = {
  kind: 'hardware' as const,
  id: 'clamp',
  name: 'wire-rope clamp',
  source,
  breakingStrength: 64e3,
  length: 0.14,
}

const stanchions = [
  { id: 'S1', role: 'end' as const, station: 2.05, offset: 0, part: 'post', bracket: 'brk' },
  { id: 'S2', role: 'end' as const, station: 14.05, offset: 0, part: 'post', bracket: 'brk' },
]

/** A plan that fits the facts; only what rules read is filled in. */
function testPlan(units: 'us' | 'si' = 'si'): Plan {
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

const corner = {
  method: 'energy' as const,
  grip: 'sliding' as const,
  line: 'stiff' as const,
  connector: 'high' as const,
  span: 0,
  worker: 'W1',
}
export const demand = (value: number): Demand => ({ value, corner })
export const unknown = (atLeast?: number): Demand => ({
  value: { unknown: 'the line did not converge' },
  ...(atLeast === undefined ? {} : { atLeast }),
})

function leg(role: LegFacts['role'], index: number): LegFacts {
  const station = row.first + row.spacing * index
  const along = Math.abs(2.05 - station)
  const length = Math.hypot(along, 1.067)
  const angle = (Math.acos(1.067 / length) * 180) / Math.PI
  return {
    role,
    row,
    index,
    station,
    along,
    across: 0,
    length,
    angle,
    force: demand(6500 + index),
    farSide: true,
  }
}

/** A tie-back of S1 with its feet on two loops of row A. */
export function tieBackFacts(strapIndex = 2, tensionerIndex = 1): TieBackFacts {
  const legs: [LegFacts, LegFacts] = [leg('strap', strapIndex), leg('tensioner', tensionerIndex)]
  return {
    tieBack: testPlan().lines[0]!.tieBacks[0]!,
    part: strap,
    stanchion: stanchions[0]!,
    height: post.height,
    legs,
    loopsBetween: Math.max(0, Math.abs(strapIndex - tensionerIndex) - 1),
    strapNeeded: legs[0].length + legs[1].length + strap.wrapLength,
  }
}

function stanchionFacts(index: number): StanchionFacts {
  const stanchion = stanchions[index]!
  return {
    stanchion,
    part: post,
    bracket,
    isEnd: true,
    tieBackCount: 1,
    row,
    engaged: [5, 6, 7, 8].map((i) => ({ index: i + 40 * index, station: 1.6 + 0.3 * (i - 5) + 12 * index })),
    beside: { before: 2, after: 2 },
    shaft: demand(6800),
    axial: demand(9700),
    heldShaft: demand(7000),
    heldAxial: demand(9900),
    loopPull: demand(7800),
    loopCapacity: straightCapacity(row.barDiameter, row.yieldStress),
    boltEdge: 0.385,
  }
}

/** Facts of one line at which every rule holds. */
function lineFacts(): LineFacts {
  const plan = testPlan()
  return {
    line: plan.lines[0]!,
    girder,
    wireRope: rope,
    absorber,
    hardware: [clamp],
    spans: [{ length: 12, slope: 1.5 }],
    tension: demand(17300),
    heldTension: demand(18000),
    energyTension: 17000,
    timeTension: 17300,
    absorberExtension: demand(0.5),
    eyeOffset: 1.5,
    workers: [
      {
        worker: plan.workers[0]!,
        connector: lanyard,
        freeFall: demand(1.63),
        arrestForce: demand(4700),
        extension: demand(0.6),
        torn: demand(0.5),
      },
    ],
    stanchions: [stanchionFacts(0), stanchionFacts(1)],
    tieBacks: [tieBackFacts()],
  }
}

/** A whole context; `bend` changes what a test is about. */
export function context(bend: (ctx: RuleContext) => void = () => {}, units: 'us' | 'si' = 'si'): RuleContext {
  const ctx: RuleContext = {
    plan: testPlan(units),
    lines: [lineFacts()],
    rows: [{ row, girder, lines: ['L1'] }],
    obstacles: [
      {
        id: 'O1',
        name: 'shed',
        kind: 'box',
        margin: 0.3,
        gap: 1.2,
        horizontal: null,
        at: [6, 0, 10],
        line: 'L1',
        station: 6,
        worker: 'W1',
      },
    ],
  }
  bend(ctx)
  return ctx
}
