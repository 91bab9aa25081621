/** Every input that is refused before a number is computed, and the least that is not. */
import { describe, expect, it } from 'vitest'
import { faultOf } from '../../../src/solver/time/check'
import type { TimeFallInput } from '../../../src/solver/time/types'
import { fallInput, lineModel, worker } from './support'

const model = lineModel([5, 4])
const W = worker(0, 2.5)

describe('refuses', () => {
  const input = fallInput(model, [W])
  const law = W.connector
  const s = input.line.spans[0]!
  const span = (change: object): Partial<TimeFallInput> => ({
    line: { ...input.line, spans: [{ ...s, ...change }, input.line.spans[1]!] },
  })
  const who = (change: object): Partial<TimeFallInput> => ({ workers: [W, { ...W, ...change }] })

  it('nothing that is a fall', () => {
    for (const change of [
      {},
      who({ x: 0 }),
      who({ x: 5 }),
      who({ x: 9, span: 1 }),
      who({ delay: 0 }),
      who({ connector: { ...law, plateau: 0 } }),
      who({ connector: { ...law, maxExtension: 0 } }),
      span({ V: -3 }),
    ])
      expect(faultOf({ ...input, ...change })).toBeNull()
  })

  const bad = [0, -1, Number.NaN, Number.POSITIVE_INFINITY]
  it.each<[string, (v: number) => Partial<TimeFallInput>, RegExp]>([
    ['length of a span', (v) => span({ L: v }), /span 0 has no resting shape/],
    ['pull of a span', (v) => span({ H: v }), /span 0 has no resting shape/],
    ['stiffness of the rope', (v) => ({ set: { ...input.set, stiffness: v } }), /no stiffness or no weight/],
    ['weight of the rope', (v) => ({ set: { ...input.set, weight: v } }), /no stiffness or no weight/],
    ['stiffness of an end', (v) => ({ model: { ...model, endStiffness: [1e5, v] } }), /no stiffness along/],
    ['mass of an end', (v) => ({ model: { ...model, endMass: [v, 1] } }), /no mass/],
    ['mass of a body', (v) => who({ mass: v }), /worker 1: mass of/],
    ['length of a connector', (v) => who({ length: v }), /worker 1: connector length/],
    ['stiffness of a connector', (v) => who({ connector: { ...law, stiffness: v } }), /connector stiffness/],
  ])('no %s', (_, change, said) => {
    for (const v of bad) expect(faultOf({ ...input, ...change(v) }), `${v}`).toMatch(said)
  })

  it.each<[string, Partial<TimeFallInput>, RegExp]>([
    ['no height of a span', span({ V: Number.NaN }), /span 0 has no resting shape/],
    ['no spans', { line: { ...input.line, spans: [] } }, /0 spans/],
    ['a span too few', { line: { ...input.line, spans: [s] } }, /1 spans between 3 heads/],
    [
      'no spans between no heads',
      { model: { ...model, x: [0] }, line: { ...input.line, spans: [] } },
      /0 spans/,
    ],
    ['nobody', { workers: [] }, /nobody/],
    ['a plateau below nothing', who({ connector: { ...law, plateau: -1 } }), /plateau/],
    ['no plateau', who({ connector: { ...law, plateau: Number.NaN } }), /plateau/],
    ['an extension below nothing', who({ connector: { ...law, maxExtension: -1 } }), /plateau/],
    ['a span before the first', who({ span: -1 }), /span -1 is not there/],
    ['a span past the last', who({ span: 2 }), /span 2 is not there/],
    ['a place before its span', who({ x: -0.01 }), /does not lie in span 0/],
    ['a place past its span', who({ x: 5.01 }), /does not lie in span 0/],
    ['no place', who({ x: Number.NaN }), /does not lie/],
    ['a delay below nothing', who({ delay: -0.1 }), /delay of -0.1/],
    ['no delay', who({ delay: Number.NaN }), /delay of/],
    ['no surface', who({ surface: Number.NaN }), /a height is missing/],
    ['no D-ring', who({ dRingHeight: Number.POSITIVE_INFINITY }), /a height is missing/],
    ['no stretch', who({ harnessStretch: Number.NaN }), /a height is missing/],
    ['no margin', who({ marginBelow: Number.NaN }), /a height is missing/],
  ])('%s', (_, change, said) => expect(faultOf({ ...input, ...change })).toMatch(said))
})
