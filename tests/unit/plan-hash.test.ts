import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { canonical } from '../../src/plan/canonical'
import { planHash } from '../../src/plan/hash'
import type { PlanRecord } from '../../src/plan/types'
import { type Loose, SAMPLES, sample } from './plan-support'

/** The same object with its fields in another order, all the way down. */
function shuffled(value: Loose): Loose {
  if (Array.isArray(value)) return value.map(shuffled)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([k, v]) => [k, shuffled(v)]),
  )
}

/** Sorted keys, no spaces, by the replacer of JSON.stringify: a second way to the same text. */
function sortedByReplacer(value: unknown): string {
  return JSON.stringify(value, (_key, v) =>
    typeof v === 'object' && v !== null && !Array.isArray(v)
      ? Object.fromEntries(
          Object.keys(v)
            .sort()
            .map((k) => [k, v[k]]),
        )
      : v,
  )
}

describe('the canonical form', () => {
  it('sorts keys, has no spaces, and leaves lists in order', () => {
    expect(canonical({ b: [2, 1], a: { d: null, c: 'x y' } })).toBe('{"a":{"c":"x y","d":null},"b":[2,1]}')
  })

  it('is that of JSON.stringify on sorted objects', () => {
    // Integer-like keys are left out: JavaScript puts those of an object in number order whatever was asked.
    const key = fc.string({ maxLength: 6 }).filter((k) => !/^\d+$/.test(k) && k !== '__proto__')
    const any = fc.letrec((tie) => ({
      value: fc.oneof(
        { maxDepth: 4 },
        fc.string(),
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        fc.boolean(),
        fc.constant(null),
        fc.array(tie('value'), { maxLength: 4 }),
        fc.dictionary(key, tie('value'), { maxKeys: 4 }),
      ),
    })).value
    fc.assert(
      fc.property(any, (v) => canonical(v) === sortedByReplacer(v)),
      { numRuns: 500 },
    )
  })
})

describe('the hash of a plan', () => {
  it.each(SAMPLES)('%s is the sha256 that Node computes', (name) => {
    const plan = sample(name)
    const { records: _, ...counted } = plan
    expect(planHash(plan)).toBe(createHash('sha256').update(sortedByReplacer(counted)).digest('hex'))
  })

  it('does not hang on the order of fields or on records', () => {
    const plan = sample()
    const note: PlanRecord = {
      kind: 'finding-note',
      id: 'R99',
      at: '2031-01-01',
      by: 'x',
      rule: 'free-fall',
      subject: 'W1',
      text: 'seen',
    }
    expect(planHash(shuffled(plan))).toBe(planHash(plan))
    expect(planHash({ ...plan, records: [...(plan.records ?? []), note] })).toBe(planHash(plan))
  })

  it('changes with every number, text and order that counts', () => {
    const hashes = new Set<string>()
    const changes: ((p: Loose) => void)[] = [
      () => {},
      (p) => (p.lines[0].stanchions[1].station += 1e-9),
      (p) => (p.title += '.'),
      (p) => p.lines[0].hardware.reverse() && p.lines[0].hardware.push('shackle-12'),
      (p) => (p.basis.sources.safetyFactor = 'user'),
      (p) => (p.unknown = 1),
    ]
    for (const change of changes) {
      const plan = sample() as Loose
      change(plan)
      hashes.add(planHash(plan))
    }
    expect(hashes.size).toBe(changes.length)
  })
})
