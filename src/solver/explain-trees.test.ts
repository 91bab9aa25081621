/** The trees of explanations: their figures, units and words, one by one. */
import { describe, expect, it } from 'vitest'
import { bracketForces } from './bracket'
import { disagreements, type Explained, flatten, given } from './explain'
import {
  explainClearance,
  explainDepth,
  explainEnergyBalance,
  explainExtension,
  explainFreeFall,
  type FallFigures,
} from './explain-fall'
import { explainHead, explainLoops } from './explain-head'
import { explainEyeOffset, explainTakeUp } from './explain-line'

const close = (got: number | null | undefined, want: number): void => expect(got).toBeCloseTo(want, 9)

const FALL: FallFigures = {
  type: 'lanyard',
  length: 1.2,
  dRingHeight: 1.45,
  height: 1.05,
  mass: 95,
  workers: 2,
  stiffness: 50e3,
  plateau: 4000,
  harnessStretch: 0.3,
  marginBelow: 0.61,
  freeFall: 1.6,
  drop: 0.4,
  extension: 0.58,
  torn: 0.5,
  arrestForce: 4000,
  work: 700,
  sources: { connector: 'maker', margin: 'practice' },
}
/** Label, value and unit of a tree's own parts. */
const partsOf = (tree: Explained): (string | number | null)[][] =>
  tree.parts.map((p) => [p.label, p.value, p.unit])

describe('explanations of a fall', () => {
  it('free fall and depth by the kind of connector', () => {
    const retractable: FallFigures = { ...FALL, type: 'retractable', length: 0.6, freeFall: 1 }
    for (const [f, name, length] of [
      [FALL, 'Lanyard length', 1.2],
      [retractable, 'Lock-off distance', 0.6],
    ] as const) {
      const fall = explainFreeFall(f)
      expect([fall.value, fall.symbol]).toEqual([f.freeFall, 'h'])
      expect(fall.equation).toBe(f === FALL ? 'freeFallLanyard' : 'freeFallRetractable')
      expect(disagreements(fall)).toEqual([])
      expect(partsOf(fall)).toEqual([
        [name, length, 'm'],
        ['D-ring above the feet', 1.45, 'm'],
        ['Unloaded rope above the walking surface', 1.05, 'm'],
      ])
    }
    close(explainDepth(FALL).value, 0.4 + 1.2 + 0.58 + 0.3 + 1.45 - 1.05 + 0.61)
    close(explainDepth(retractable).value, 0.4 + 1 + 0.58 + 0.3 + 0.61)
    expect(explainDepth(FALL).parts.map((p) => p.value)).toEqual([0.4, 1.2, 0.58, 0.3, 1.45, 1.05, 0.61])
    expect(explainDepth(retractable).parts.map((p) => p.value)).toEqual([0.4, 1, 0.58, 0.3, 0.61])
  })

  it('extension, total fall and clearance', () => {
    const e = explainExtension(FALL)
    expect([e.value, e.symbol, disagreements(e)]).toEqual([0.58, 'e', []])
    const clearance = explainClearance(FALL)
    close(clearance.value, 1.6 + 0.4 + 0.58 + 0.3 + 0.61)
    expect(partsOf(clearance.parts[0]!)).toEqual([
      ['Free fall', 1.6, 'm'],
      ['Line drop', 0.4, 'm'],
      ['Connector extension', 0.58, 'm'],
      ['Harness stretch and D-ring shift', 0.3, 'm'],
    ])
    expect(clearance.parts[1]!.value).toBe(0.61)
  })

  it('a value from elsewhere stands, and is held against its parts', () => {
    for (const explain of [explainClearance, explainDepth]) {
      expect([explain(FALL, 3).value, explain(FALL, null).value]).toEqual([3, null])
      expect(disagreements(explain(FALL, 3)).length).toBe(1)
    }
  })

  it('energy: what the fall gives and what is taken', () => {
    const tree = explainEnergyBalance(FALL)
    const [gives, takes] = tree.parts
    close(gives!.value, 2 * 95 * 9.80665 * (1.6 + 0.4 + 0.58))
    close(takes!.value, 700 + 2 * ((4000 * 4000) / 1e5 + 4000 * 0.5))
    close(tree.value, gives!.value! - takes!.value!)
    expect([gives, takes].map((t) => t!.parts.map((p) => p.symbol))).toEqual([
      ['n', 'm', 'g', 'h', 'd', 'e'],
      [undefined, 'n', 'F', 'k', 'Fp', 'x'],
    ])
  })
})

describe('explanations of an end stanchion', () => {
  const figures = {
    pull: 10e3,
    down: 500,
    headStiffness: 1e5,
    height: 1,
    corner: 'by hand',
    sources: { stanchion: 's', tieBack: 't' },
  }

  it('a leg at 45 degrees and the shaft share the pull by their stiffness', () => {
    const t = explainHead({ ...figures, legs: [{ label: 'Leg', along: 1, across: 0, stiffness: 2e5 }] })
    // k = (s/l)(a/l)^2 = 2e5/sqrt(2)/2; K = ks + k; F = T (k/K)/(a/l); down F h/l.
    const k = 2e5 / Math.SQRT2 / 2
    const along = (10e3 * k) / (1e5 + k)
    close(t.legs[0]!.value! / (along * Math.SQRT2), 1)
    close(t.shaft.value! + along, 10e3)
    close(t.axial.value! - 500, along)
    close(t.baseMoment.value, t.shaft.value!)
    close(t.angles[0]!.value, 45)
    const units = [...t.legs, t.shaft, t.axial, t.baseMoment, ...t.angles].map((n) => n.unit)
    expect(units).toEqual(['N', 'N', 'N', 'N m', 'deg'])
    const nodes = flatten(t.axial).map(({ node }) => [node.label, node.symbol, node.unit])
    for (const want of [
      ['Leg, length', 'l', 'm'],
      ['Leg, stiffness along the line', 'k', 'N/m'],
      ['Leg, downwards', undefined, 'N'],
      ['Stiffness of the head', 'K', 'N/m'],
      ['Head pull along the line', 'T', 'N'],
    ])
      expect(nodes).toContainEqual(want)
  })

  it('a leg straight under the head takes nothing along the line', () => {
    const t = explainHead({ ...figures, legs: [{ label: 'Leg', along: 0, across: 1, stiffness: 2e5 }] })
    expect([t.legs[0]!.value, t.shaft.value, t.axial.value]).toEqual([0, 10e3, 500])
    expect(t.legs[0]!.equation).toBeUndefined()
  })

  it('loops and bolts balance, a loop without a name by where it is', () => {
    const load = { loops: [-0.45, -0.15, 0.15, 0.45], boltsAlong: 0.3, axial: 5000, moment: 4000 }
    const { loops, balance } = explainLoops(load, ['Loop 6'])!
    expect(loops.map((l) => l.label)).toEqual([
      'Loop 6',
      'Loop at -0.150 m',
      'Loop at 0.150 m',
      'Loop at 0.450 m',
    ])
    const [held, asked] = balance.parts
    const [push, pull] = held!.parts
    expect(asked!.value).toBe(5000)
    const { bolts, loops: pulls } = bracketForces(load)!
    expect(push!.value).toBe(bolts[0] + bolts[1])
    expect(pull!.value).toBe(pulls.reduce((sum, p) => sum + p, 0))
    close(push!.value! / push!.parts.reduce((sum, p) => sum + p.value!, 0), 1)
    close(pull!.value! / loops.reduce((sum, p) => sum + p.value!, 0), 1)
    expect([push!.unit, pull!.unit, pull!.parts.length]).toEqual(['N', 'N', 4])
    expect(Math.abs(held!.value! - 5000)).toBeLessThan(1e-5)
    expect(Math.abs(balance.value!)).toBeLessThan(1e-5)
    // The moment of the tube about its middle: 4000 N m at lengths of loops and bolts.
    const moments = [...push!.parts, ...pull!.parts].map((p) => p.value! * p.parts[2]!.value!)
    const [before, after] = moments
    const fromLoops = moments.slice(2).reduce((sum, v) => sum + v, 0)
    close(Math.abs(before! + after! - fromLoops) / 4000, 1)
  })
})

describe('explanations of a line', () => {
  const rope = {
    tension: 4450,
    freeLength: 18.2,
    axialStiffness: 3.25e6,
    constructionalStretch: 0.003,
    spans: [
      { length: 9.1, sag: 0.01 },
      { length: 8, sag: 0.02 },
    ],
    endStiffness: [2e5, 2.5e5] as [number, number],
  }

  it('take-up of four parts, spans and heads by name', () => {
    const take = explainTakeUp(rope, { rope: 'r', stanchion: 's' })
    const sag = (8 * 1e-4) / (3 * 9.1) + (8 * 4e-4) / 24
    const want = [(4450 * 18.2) / 3.25e6, 0.003 * 18.2, sag, 4450 * (1 / 2e5 + 1 / 2.5e5)]
    for (const [i, part] of take.parts.entries()) close(part.value, want[i]!)
    expect(take.parts[2]!.parts.map((p) => p.label)).toEqual(['Sag of span 1', 'Sag of span 2'])
    expect(take.parts[3]!.parts.map((p) => p.label)).toEqual([
      'Nominal pretension',
      'First head',
      'Last head',
    ])
    expect(explainTakeUp({ ...rope, spans: [] }, { rope: 'r', stanchion: 's' }).parts[2]!.unit).toBe('m')
    expect(take.unit).toBe('m')
  })

  it('eye offset with and without an absorber, and where each length is from', () => {
    const take = given('Take-up', 0.1, 'm', 'x')
    const pieces = [{ name: 'Shackle', length: 0.06, source: 'maker' }]
    const eye = explainEyeOffset({ length: 0.46, source: 'label' }, pieces, take)
    expect(partsOf(eye)).toEqual([
      ['Absorber length', 0.46, 'm'],
      ['Hardware length', 0.06, 'm'],
      ['Take-up', 0.1, 'm'],
    ])
    expect(eye.parts[0]!.source).toBe('label')
    const none = explainEyeOffset(null, [], take)
    expect(partsOf(none)).toEqual([
      ['No absorber', 0, 'm'],
      ['Hardware length', 0, 'm'],
      ['Take-up', 0.1, 'm'],
    ])
    expect(none.parts[0]!.source).toBe('the plan')
  })
})
