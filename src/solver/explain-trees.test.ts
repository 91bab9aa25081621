/** Every equation of explanations in numbers by hand, and the trees' figures, units and words, one by one. */
import { describe, expect, it } from 'vitest'
import { bracketForces } from './bracket'
import { derived, disagreements, type Explained, flatten, given } from './explain'
import { type EquationId, equations } from './explain-equations'
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

/** Parts in order, and what the printed formula gives by hand. */
const BY_HAND: Record<EquationId, [number[], number]> = {
  sum: [[1, 2, 4.5], 7.5],
  greatest: [[3, 7, 5], 7],
  least: [[3, 7, 2], 2],
  ratio: [[10, 4], 2.5],
  difference: [[10, 4], 6],
  freeFallLanyard: [[1.8, 1.5, 1.1], 2.2],
  freeFallRetractable: [[0.6, 1.5, 1.1], 1],
  connectorExtension: [[4000, 50000, 0.3], 0.38],
  fallEnergy: [[2, 100, 10, 1.5, 0.5, 0.4], 4800],
  absorbedEnergy: [[500, 2, 4000, 40000, 3000, 0.25], 500 + 2 * (200 + 750)],
  totalFall: [[1, 0.5, 0.4, 0.3], 2.2],
  clearance: [[2.2, 0.6], 2.8],
  depthLanyard: [[0.5, 1.2, 0.4, 0.3, 1.5, 1.1, 0.6], 3.4],
  depthRetractable: [[0.5, 1, 0.4, 0.3, 0.6], 2.8],
  legLength: [[2, 3, 6], 7],
  legAngle: [[1, 2], 60],
  legStiffness: [[100, 5, 4], 20 * 0.64],
  headStiffness: [[10, 20, 30], 60],
  legForce: [[1000, 20, 50, 4, 5], 500],
  shaftForce: [[1000, 20, 50], 400],
  legDown: [[1000, 3, 5], 600],
  axial: [[100, 20, 3], 123],
  baseMoment: [[1000, 1.1], 1100],
  loopPull: [[100, 50, 0.4], 120],
  boltPush: [[-3, 10, 0.2], 100],
  // Two legs of 12 mm at 500 MPa: 2 x pi 36 mm2 x 500.
  straightCapacity: [[0.012, 500e6], 2 * Math.PI * 36e-6 * 500e6],
  boltEdge: [[1, -0.2, 0.1], 0.25],
  ropeStrength: [[64000, 0.8], 51200],
  takeUpElastic: [[5000, 20, 2e6], 0.05],
  takeUpConstructional: [[0.002, 20], 0.04],
  takeUpSag: [[0.3, 12], 0.02],
  takeUpHeads: [[6000, 2e5, 3e5], 0.05],
  eyeOffset: [[0.4, 0.2, 0.05], 0.65],
}

describe('equations', () => {
  it.each(Object.keys(BY_HAND) as EquationId[])('%s', (id) => {
    const [parts, want] = BY_HAND[id]
    close(equations[id].evaluate(parts) / want, 1)
    expect(Object.keys(BY_HAND).sort()).toEqual(Object.keys(equations).sort())
  })

  it('give nothing below nothing: no free fall, no pull of a loop that is pressed, no push of a lifted bolt', () => {
    expect(equations.freeFallLanyard.evaluate([1, 0.5, 2])).toBe(0)
    expect(equations.freeFallRetractable.evaluate([0.6, 1, 1.2])).toBe(0.6)
    expect(equations.loopPull.evaluate([-100, 50, 0.4])).toBe(0)
    expect(equations.boltPush.evaluate([3, 10, 0.2])).toBe(0)
  })

  it('give no number where a part is missing', () => {
    expect(derived('difference', 'd', [given('a', 1, 'm', 'x')]).value).toBeNull()
    expect(derived('sum', 's', [given('a', 1, 'm', 'x'), given('b', null, 'm', 'x')]).value).toBeNull()
  })
})

describe('a figure', () => {
  it('has a symbol where there is one, and no empty one else', () => {
    expect(given('a', 1, 'm', 'x', 'h')).toEqual({
      label: 'a',
      value: 1,
      unit: 'm',
      source: 'x',
      parts: [],
      symbol: 'h',
    })
    expect('symbol' in given('a', 1, 'm', 'x')).toBe(false)
    const parts = [given('a', 1, 'm', 'x')]
    expect(derived('sum', 's', parts, { symbol: 'e' }).symbol).toBe('e')
    expect('symbol' in derived('sum', 's', parts)).toBe(false)
  })

  it('has the unit and source of its equation, of its parts, or its own', () => {
    const parts = [given('a', 1, 'm', 'x')]
    expect([derived('sum', 's', parts).unit, derived('sum', 's', []).unit]).toEqual(['m', ''])
    expect(derived('clearance', 's', parts).unit).toBe('m')
    expect(derived('sum', 's', parts, { unit: 'N' }).unit).toBe('N')
    expect([derived('sum', 's', parts).source, derived('sum', 's', parts, { source: 'y' }).source]).toEqual([
      'statics',
      'y',
    ])
  })

  it('keeps its own value where it has one, be that null', () => {
    const parts = [given('a', 1, 'm', 'x')]
    expect(derived('sum', 's', parts, { value: null }).value).toBeNull()
    expect(derived('sum', 's', parts, { value: 3 }).value).toBe(3)
  })

  it('is listed with its depth, root first', () => {
    const tree = derived('sum', 's', [
      derived('sum', 't', [given('a', 1, 'm', 'x')]),
      given('b', 2, 'm', 'x'),
    ])
    expect(flatten(tree).map(({ node, depth }) => [node.label, depth])).toEqual([
      ['s', 0],
      ['t', 1],
      ['a', 2],
      ['b', 1],
    ])
  })
})

describe('a disagreement', () => {
  const off = (tree: Explained): boolean => disagreements(tree).length > 0
  const two = (a: number, b: number, value: number | null): Explained =>
    derived('difference', 'd', [given('a', a, 'N', 'x'), given('b', b, 'N', 'x')], { value })

  it('is judged by the greatest of the parts that are added, a millionth of it', () => {
    expect(off(two(1e6, 1e6, 0.9))).toBe(false)
    expect(off(two(1e6, 1e6, 1.1))).toBe(true)
    expect(off(two(-1e6, -1e6, 0.9))).toBe(false)
    expect(off(two(1, 1e6, -999999 + 1.1))).toBe(true)
    expect(off(two(1, 1e6, -999999 + 0.9))).toBe(false)
    expect(off(two(3, 1, 2 + 4e-6))).toBe(true)
    expect(off(two(3, 1, 2 - 4e-6))).toBe(true)
  })

  it('is judged by the value itself where parts are of several kinds', () => {
    const shaft = (value: number): Explained =>
      derived('baseMoment', 'm', [given('F', 1e6, 'N', 'x'), given('h', 1e-6, 'm', 'x')], { value })
    expect(off(shaft(1 + 0.9e-6))).toBe(false)
    expect(off(shaft(1 + 1.1e-6))).toBe(true)
  })

  it('is null on one side alone', () => {
    expect(off(two(3, 1, null))).toBe(true)
    expect(off(two(1, 1, null))).toBe(true)
    const missing = [given('a', null, 'N', 'x'), given('b', 1, 'N', 'x')]
    expect(off(derived('difference', 'd', missing, { value: 2 }))).toBe(true)
    expect(off(derived('difference', 'd', missing, { value: null }))).toBe(false)
    expect(off(derived('difference', 'd', missing, { value: 0 }))).toBe(true)
  })

  it('is told with its path and both numbers, and what lies below it too', () => {
    const inner = two(3, 1, 5)
    const tree = derived('sum', 's', [inner], { value: 7 })
    expect(disagreements(tree)).toEqual([
      { path: ['s'], value: 7, recomputed: 5 },
      { path: ['s', 'd'], value: 5, recomputed: 2 },
    ])
  })
})

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
