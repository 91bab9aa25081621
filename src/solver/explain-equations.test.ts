/** Every equation of explanations in numbers by hand; what a figure is, and when two of them disagree. */
import { describe, expect, it } from 'vitest'
import { derived, disagreements, type Explained, flatten, given } from './explain'
import { type EquationId, equations } from './explain-equations'

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
