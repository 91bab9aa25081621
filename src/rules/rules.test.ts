import { describe, expect, it } from 'vitest'
import { disagreements } from '../solver/explain'
import type { RuleContext } from './context'
import { worstDemand } from './context'
import { explainFinding, findingsOf, ruleById, rules } from './index'
import { context, demand, unknown } from './testing/facts'
import { line, worker } from './testing/one'

/** The published list of rule ids. */
const IDS =
  `anchor-spacing line-slope end-tie-back tie-back-angle tie-back-distance tie-back-side tie-back-loops-distinct
tie-back-loops-adjacent strap-length tie-back-strength loops-engaged loops-beside bar-size bolt-edge loop-strength
loop-side-pull stanchion-strength wire-rope-strength hardware-strength absorber-runs-out rope-held eye-offset free-fall
arrest-force deceleration connector-runs-out worker-mass obstacle-gap time-method rescue-plan`.split(/\s+/)

/** Replaces every computed number by an unknown. */
function forget(ctx: RuleContext): void {
  const l = line(ctx)
  Object.assign(l, { tension: unknown(), heldTension: unknown(), absorberExtension: unknown() })
  const lost = { unknown: 'the line did not converge' }
  Object.assign(l, { energyTension: lost, timeTension: lost, eyeOffset: lost })
  Object.assign(worker(ctx), {
    freeFall: unknown(),
    arrestForce: unknown(),
    extension: unknown(),
    torn: unknown(),
  })
  for (const s of l.stanchions) {
    Object.assign(s, {
      shaft: unknown(),
      axial: unknown(),
      heldShaft: unknown(),
      heldAxial: unknown(),
      loopPull: unknown(),
    })
  }
  for (const t of l.tieBacks) {
    for (const leg of t.legs) leg.force = unknown()
    t.strapNeeded = lost
    t.loopsBetween = lost
  }
  ctx.obstacles[0]!.gap = lost
}

describe('the registry', () => {
  it('holds the thirty rules, each once', () => {
    expect(rules.map((r) => r.id).sort()).toEqual([...IDS].sort())
    expect(ruleById('no-such-rule')).toBeUndefined()
  })

  it('gives one finding per rule and subject', () => {
    const keys = findingsOf(context()).map((f) => `${f.rule} ${f.subject}`)
    expect(new Set(keys).size).toBe(keys.length)
    expect(new Set(keys.map((k) => k.split(' ')[0])).size).toBe(30)
  })

  it('holds everywhere on good facts, but for the side pull that is always told', () => {
    const off = findingsOf(context()).filter((f) => f.status !== 'pass')
    expect(off.map((f) => [f.rule, f.status])).toEqual([['loop-side-pull', 'warn']])
  })
})

describe('every finding', () => {
  const worlds: [string, RuleContext][] = [
    ['si', context()],
    ['us', context(undefined, 'us')],
    ['unknown', context(forget)],
  ]
  it.each(worlds)('%s: says a whole sentence with no forbidden word and no broken number', (_, ctx) => {
    for (const f of findingsOf(ctx)) {
      expect(f.text, f.rule).toMatch(/^[A-Z].*\.$/)
      expect(f.text, f.rule).not.toMatch(
        /NaN|Infinity|undefined|null|\b(safe|OK|compliant|approved)\b|!| {2}| ,/,
      )
      expect(f.source.length).toBeGreaterThan(3)
      for (const n of [f.value, f.limit, f.margin ?? null])
        expect(n === null || Number.isFinite(n)).toBe(true)
    }
  })

  it('is unknown with the reason where its number could not be computed', () => {
    const found = findingsOf(context(forget)).filter((f) => f.status === 'unknown')
    // 6 of the line, 4 of its tie-back, 2 of each of 2 stanchions, 4 of the worker, 1 of the obstacle
    expect(found).toHaveLength(19)
    for (const f of found) {
      expect(f.value).toBeNull()
      expect(f.text).toContain('the line did not converge')
    }
  })

  it('has a sum whose root is its value and which holds when worked out again', () => {
    const ctx = context()
    for (const f of findingsOf(ctx)) {
      const tree = explainFinding(ctx, f)
      if (f.value === null || f.rule === 'rescue-plan') continue
      expect(tree, f.rule).not.toBeNull()
      expect(Math.abs(tree!.value! - f.value), f.rule).toBeLessThan(1e-9 * Math.max(1, Math.abs(f.value)))
      expect(disagreements(tree!), f.rule).toEqual([])
    }
  })
})

describe('worstDemand', () => {
  it('takes the greatest and keeps its corner; an unknown makes it unknown with what is known beside', () => {
    expect(worstDemand([demand(1), demand(3), demand(2)])).toEqual(demand(3))
    const mixed = worstDemand([demand(1), unknown(), demand(3)])
    expect(mixed).toMatchObject({ value: { unknown: 'the line did not converge' }, atLeast: 3 })
    expect(worstDemand([]).value).toEqual({ unknown: 'no fall was computed' })
    expect(worstDemand([demand(Number.NaN)]).value).toMatchObject({ unknown: expect.any(String) })
  })
})
