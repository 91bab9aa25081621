/** An invented plan and invented results for tests of drawings and papers; no solver made these figures. */
import type { Line, Plan, Vec3 } from '../../../src/plan/types'
import type { LineDetail } from '../../../src/study/details'
import type { Fall, Finding, LineResults, Results } from '../../../src/study/results'

const example = "example figures: replace with your parts' documentation"

export interface FixtureOptions {
  stanchions?: number
  title?: string
  lineName?: string
}

/** A girder with a line of any number of stanchions, 6 m apart, over a creek, a lane and a shed. */
export function fixturePlan(options: FixtureOptions = {}): Plan {
  const count = options.stanchions ?? 3
  const length = 4 + Math.max(1, count - 1) * 6
  return {
    format: 'fallroom-plan',
    version: 1,
    title: options.title ?? 'Willow bend, bay 2',
    site: 'Approach spans',
    units: 'us',
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
      boltEdge: 0.076,
      plateThickness: 0.0064,
      eyeOffset: { low: 0.3, high: 2.1 },
      maxSlope: 5,
      sources: { safetyFactor: 'OSHA 1926.502(d)(8)', boltEdge: 'common practice' },
    },
    girders: [
      {
        id: 'G1',
        name: 'Girder 1',
        start: [0, 0, 12],
        end: [length, 0, 12],
        material: 'concrete',
        section: {
          topWidth: 1.07,
          topThickness: 0.13,
          webThickness: 0.15,
          bottomWidth: 0.66,
          bottomThickness: 0.2,
          depth: 1.6,
        },
        loops: [
          {
            id: 'A',
            first: 0.1,
            spacing: 0.3,
            count: Math.floor((length - 0.1) / 0.3),
            offset: 0,
            barDiameter: 0.0127,
            yieldStress: 414e6,
            height: 0.15,
          },
        ],
      },
    ],
    decks: [],
    lines: [fixtureLine(count, options.lineName ?? 'Line 1')],
    workers: [
      {
        id: 'W1',
        name: 'Decking hand',
        line: 'L1',
        mass: 100,
        dRingHeight: 1.5,
        harnessStretch: 0.3,
        connector: 'lanyard',
      },
    ],
    obstacles: [
      { id: 'O-creek', name: 'Creek', kind: 'water', elevation: 2 },
      {
        id: 'O-lane',
        name: 'Haul road',
        kind: 'lane',
        path: [
          [5, -20, 3],
          [5, 20, 3],
        ],
        width: 3.6,
        clearHeight: 4.3,
      },
      { id: 'O-shed', name: 'Site shed', kind: 'box', center: [11.5, 0, 8.1], size: [2, 2, 1.4], margin: 0 },
    ],
    parts: [
      {
        id: 'rope',
        name: 'Wire rope 3/8 in 7x19',
        source: example,
        kind: 'wire-rope',
        diameter: 0.009525,
        construction: '7x19',
        breakingStrength: 64050,
        axialStiffness: { low: 2.6e6, high: 3.9e6 },
        massPerMetre: 0.362,
        thermalExpansion: 1.2e-5,
        termination: 0.8,
      },
      {
        id: 'absorber',
        name: 'Line absorber',
        source: example,
        kind: 'line-absorber',
        onset: { low: 8600, high: 9400 },
        full: { low: 10800, high: 12000 },
        maxExtension: 1.07,
        breakingStrength: 66700,
        length: 0.46,
      },
      {
        id: 'lanyard',
        name: 'Lanyard 4 ft',
        source: example,
        kind: 'connector',
        type: 'lanyard',
        length: 1.2,
        stiffness: 60000,
        plateau: { low: 3200, high: 4700 },
        maxExtension: 1.07,
        maxForce: 8000,
        ratedFreeFall: 1.83,
      },
      {
        id: 'post',
        name: 'Stanchion 42 in',
        source: example,
        kind: 'stanchion',
        height: 1.067,
        headStiffness: 120000,
        headCapacity: 26700,
        axialCapacity: 89000,
        mass: 19,
      },
      {
        id: 'bracket',
        name: 'Loop bracket',
        source: example,
        kind: 'bracket',
        tubeLength: 1,
        boltsAlong: 0.3,
        boltsAcross: 0.3,
        upliftCapacity: 53000,
      },
      {
        id: 'strap',
        name: 'Tie-back strap',
        source: example,
        kind: 'tie-back',
        length: 6.1,
        wrapLength: 0.4,
        stiffness: 250000,
        breakingStrength: 62000,
      },
      {
        id: 'shackle',
        name: 'Shackle 1/2 in',
        source: example,
        kind: 'hardware',
        breakingStrength: 88000,
        length: 0.06,
      },
      {
        id: 'tensioner',
        name: 'Tensioner',
        source: example,
        kind: 'hardware',
        breakingStrength: 71000,
        length: 0.52,
      },
      {
        id: 'clamp',
        name: 'Wire-rope clamp',
        source: example,
        kind: 'hardware',
        breakingStrength: 64000,
        length: 0.14,
      },
    ],
    records: [],
  }
}

function fixtureLine(count: number, name: string): Line {
  const stanchions = Array.from({ length: count }, (_, i) => ({
    id: `S${i + 1}`,
    role: i === 0 || i === count - 1 ? ('end' as const) : ('intermediate' as const),
    station: 2.15 + i * 6,
    offset: 0,
    part: 'post',
    bracket: 'bracket',
    plate: i === 0 ? 0.0064 : 0,
  }))
  const last = Math.round((2.15 + (count - 1) * 6 + 1.3 - 0.1) / 0.3)
  const tieBack = (id: string, stanchion: string, loops: [number, number]) => ({
    id,
    stanchion,
    part: 'strap',
    strapLoop: { row: 'A', index: loops[0] },
    tensionerLoop: { row: 'A', index: loops[1] },
  })
  return {
    id: 'L1',
    name,
    girder: 'G1',
    stanchions,
    tieBacks: count < 2 ? [] : [tieBack('T1', 'S1', [2, 1]), tieBack('T2', `S${count}`, [last, last + 1])],
    wireRope: 'rope',
    absorber: 'absorber',
    absorberAt: 'end',
    hardware: ['shackle', 'tensioner', 'clamp', 'shackle'],
    pretension: 4450,
    pretensionTolerance: 0.1,
    installTemperature: 15,
    serviceTemperature: { low: -15, high: 40 },
    workersAtOnce: 1,
  }
}

const drop = (station: number): number => 1.5 * Math.abs(Math.sin(((station - 2.15) / 6) * Math.PI))

/** The shapes that go with the plan: a straight rope, and one that is pulled down in the first span. */
export function fixtureDetail(plan: Plan): LineDetail {
  const line = plan.lines[0]!
  const top = 12 + 1.067
  const heads = line.stanchions.map((s): Vec3 => [s.station, s.offset, top])
  const middle: Vec3 = [2.15 + 3, 0, top - 1.5]
  return {
    id: line.id,
    heads,
    installedRope: heads,
    governing: fixtureFalls()[0]!,
    saggedRope: heads.length > 1 ? [heads[0]!, middle, ...heads.slice(1)] : [],
    hangingAt: heads.length > 1 ? middle : null,
    dRingAt: heads.length > 1 ? [middle[0], 0, middle[2] - 1.6] : null,
    feetAt: heads.length > 1 ? [middle[0], 0, middle[2] - 3.5] : null,
  }
}

function fixtureFalls(): Fall[] {
  const common = { span: 0, station: 5.15, worker: 'W1', workers: 1, freeFall: 1.64, absorberExtension: 0.4 }
  return [
    {
      ...common,
      method: 'energy',
      grip: 'sliding',
      line: 'soft',
      connector: 'low',
      arrestForce: 3200,
      connectorExtension: 0.4,
      lineDrop: 1.5,
      tension: 9600,
      totalFall: 3.84,
      clearance: 4.45,
    },
    {
      ...common,
      method: 'energy',
      grip: 'sliding',
      line: 'stiff',
      connector: 'high',
      arrestForce: 4100,
      connectorExtension: 0.07,
      lineDrop: 1.4,
      tension: 11000,
      totalFall: 3.41,
      clearance: 4.02,
    },
    {
      ...common,
      method: 'dynamic',
      grip: 'sliding',
      line: 'stiff',
      connector: 'high',
      arrestForce: 4300,
      connectorExtension: 0.09,
      lineDrop: 1.45,
      tension: 12250,
      totalFall: 3.48,
      clearance: 4.09,
    },
  ]
}

/** Results of the form that a study gives. */
export function fixtureResults(plan: Plan): Results {
  return {
    format: 'fallroom-results',
    version: 1,
    plan: plan.title,
    planHash: '5e3a'.repeat(16),
    lines: plan.lines.map((line) => lineResults(line)),
    obstacles: [
      { id: 'O-creek', gap: 5.55, at: [5.15, 0, 2], line: 'L1', station: 5.15 },
      { id: 'O-lane', gap: 0.25, at: [5, 0, 7.3], line: 'L1', station: 5 },
      { id: 'O-shed', gap: -1.25, at: [11.15, 0, 8.8], line: 'L1', station: 11.15 },
    ],
    findings: fixtureFindings(),
  }
}

function lineResults(line: Line): LineResults {
  const [first, last] = [line.stanchions[0]?.station ?? 0, line.stanchions.at(-1)?.station ?? 0]
  const floor = Array.from({ length: 41 }, (_, i) => {
    const station = first + ((last - first) * i) / 40
    return { station, depth: 2.95 + drop(station), excess: 0 }
  })
  const ends = new Set([0, line.stanchions.length - 1])
  return {
    id: line.id,
    installed: {
      tension: 4450,
      sag: line.stanchions.slice(1).map(() => 0.0036),
      wireRopeLength: 10.8,
      eyeOffset: 1.31,
      takeUp: 0.11,
    },
    falls: line.stanchions.length > 1 ? fixtureFalls() : [],
    governing: { tension: 12250, arrestForce: 4300, clearance: 4.45, wireRopeSafetyFactor: 4.18 },
    stanchions: line.stanchions.map((s, i) => ({
      id: s.id,
      head: { along: 9500, across: 0, down: 2100 },
      tieBackForce: ends.has(i) ? 8700 : 0,
      legForces: ends.has(i) ? [5600, 5200] : [],
      tieBackAngle: ends.has(i) ? 51.7 : null,
      shaftForce: ends.has(i) ? 800 : 1200,
      axial: 7400,
      baseMoment: 850,
      engagedLoops: 3,
      loopForces: [0, 400, 2100],
    })),
    floor,
  }
}

function fixtureFindings(): Finding[] {
  return [
    {
      rule: 'wire-rope-strength',
      subject: 'L1',
      status: 'pass',
      value: 4.18,
      limit: 2,
      unit: 'ratio',
      text: 'Wire rope of Line 1 holds 4.18 times the greatest tension, 2 wanted.',
      source: 'OSHA 1926.502(d)(8)',
      line: 'L1',
      margin: 2.18,
    },
    {
      rule: 'obstacle-gap',
      subject: 'O-shed',
      status: 'fail',
      value: -1.25,
      limit: 0,
      unit: 'm',
      text: 'The room of Line 1 enters Site shed by 1.25 m.',
      source: 'OSHA 1926.502(d)(16)(iii)',
      margin: -1.25,
    },
    {
      rule: 'obstacle-gap',
      subject: 'O-creek',
      status: 'pass',
      value: 5.55,
      limit: 0,
      unit: 'm',
      text: 'Creek lies 5.55 m under the room.',
      source: 'OSHA 1926.502(d)(16)(iii)',
      margin: 5.55,
    },
    {
      rule: 'loop-side-pull',
      subject: 'T1',
      status: 'warn',
      value: 5600,
      limit: null,
      unit: 'N',
      text: 'Tie-back T1 pulls its loop askew with 5.60 kN.',
      source: 'statics',
      line: 'L1',
    },
    {
      rule: 'time-method',
      subject: 'L1',
      status: 'unknown',
      value: null,
      limit: 1.2,
      unit: 'ratio',
      text: 'The fall in time did not come to rest.',
      source: 'a threshold of ours',
      line: 'L1',
    },
  ]
}
