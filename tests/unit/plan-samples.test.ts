import { describe, expect, it } from 'vitest'
import { planFaults } from '../../src/plan/read'
import { study } from '../../src/study/study'
import { SAMPLES, sample } from './plan-support'

describe('the samples', () => {
  it.each(SAMPLES)('%s is a plan without faults, of example parts', (name) => {
    const plan = sample(name)
    expect(planFaults(plan)).toEqual([])
    for (const part of plan.parts) expect(part.source).toMatch(/^example figures/)
    expect(plan.site).toMatch(/^Invented site/)
  })

  it('one holds by little: nothing fails, and several margins are within a twentieth of their limit', () => {
    const { findings } = study(sample('thin-margins')).results
    expect(findings.filter((f) => f.status === 'fail' || f.status === 'unknown')).toEqual([])
    const thin = findings.filter((f) => {
      const share = (f.margin ?? Number.NaN) / Math.abs(f.limit || 1)
      return f.unit !== 'count' && share > 0 && share < 0.05
    })
    expect(new Set(thin.map((f) => f.rule)).size).toBeGreaterThanOrEqual(4)
  })

  it('one fails by at least five rules at once', () => {
    const { findings } = study(sample('much-to-put-right'), { withoutTime: true }).results
    const rules = new Set(findings.filter((f) => f.status === 'fail').map((f) => f.rule))
    for (const rule of [
      'tie-back-angle',
      'tie-back-loops-distinct',
      'free-fall',
      'bolt-edge',
      'obstacle-gap',
    ]) {
      expect(rules).toContain(rule)
    }
    expect(rules).toContain('rescue-plan')
  })

  it('one is a bay of four girders with two lines over a road and water, and nothing fails', () => {
    const plan = sample('four-girder-bay')
    expect([plan.girders.length, plan.lines.length]).toEqual([4, 2])
    expect(new Set(plan.obstacles.map((o) => o.kind))).toEqual(
      new Set(['water', 'lane', 'box', 'cross-frame']),
    )
    const { findings } = study(plan, { withoutTime: true }).results
    expect(findings.filter((f) => f.status === 'fail')).toEqual([])
  })
})
