/** The facts of a small plan for the tests of the rules: every figure made up, every rule met, easy to bend. */
import { straightCapacity } from '../../solver/bracket-capacity'
import type { Demand, LegFacts, LineFacts, RuleContext, StanchionFacts, TieBackFacts } from '../context'
import {
  absorber,
  bracket,
  clamp,
  girder,
  lanyard,
  post,
  rope,
  row,
  stanchions,
  strap,
  testPlan,
} from './plan'

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
