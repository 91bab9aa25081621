import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readPlan } from '../../../src/plan/read'
import type { Plan } from '../../../src/plan/types'
import { writePlan } from '../../../src/plan/write'
import { type ExplorePoint, explore } from '../../../src/study/explore/explore'
import { type Mending, mend } from '../../../src/study/mend/mend'
import { study } from '../../../src/study/study'

const read = (name: string): Plan => {
  const got = readPlan(readFileSync(new URL(`../../../samples/${name}.plan.json`, import.meta.url), 'utf8'))
  if (!got.ok) throw new Error('the sample does not read')
  return got.plan
}

function ended<P, R>(steps: Generator<P, R>): R {
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

const mendings = (plan: Plan, rule: string, subject: string): Mending[] =>
  ended(mend(plan, { rule, subject }, { withoutTime: true, most: 1 }))

describe('mending', () => {
  const plan = read('much-to-put-right')
  const before = study(plan, { withoutTime: true }).results.findings

  it.each([
    ['bolt-edge', 'S2', /plates/],
    ['tie-back-angle', 'T2', /loops/],
    ['free-fall', 'W1', /./],
  ])(
    '%s of %s: what it offers holds through the whole study, and the plan can be read again',
    (rule, subject, words) => {
      expect(before.find((f) => f.rule === rule && f.subject === subject)?.status).toBe('fail')
      const found = mendings(plan, rule, subject)
      expect(found.length).toBeGreaterThan(0)
      for (const m of found) {
        expect(m.label).toMatch(words)
        const again = readPlan(writePlan(m.plan))
        expect(again.ok).toBe(true)
        const after = study(m.plan, { withoutTime: true }).results.findings
        expect(['pass', 'warn']).toContain(
          after.find((f) => f.rule === rule && f.subject === subject)?.status,
        )
        expect(after.filter((f) => f.status === 'fail').length).toBe(m.fails)
      }
    },
  )

  it('counts falls in time: what it offers holds by both methods where only the falls in time failed', () => {
    const thin = read('thin-margins')
    const key = { rule: 'wire-rope-strength', subject: thin.lines[0]!.id }
    thin.lines = thin.lines.slice(0, 1)
    thin.workers = thin.workers.filter((w) => w.line === key.subject).slice(0, 1)
    const value = (withoutTime: boolean): number =>
      study(thin, { withoutTime }).results.lines[0]!.governing.wireRopeSafetyFactor!
    const [energy, both] = [value(true), value(false)]
    expect(both).toBeLessThan(energy - 0.01)
    thin.basis.safetyFactor = (energy + both) / 2
    const [found] = ended(mend(thin, key, { most: 1 }))
    expect(found).toBeDefined()
    const after = study(found!.plan).results
    expect(after.findings.find((f) => f.rule === key.rule && f.subject === key.subject)?.status).toBe('pass')
    expect(after.lines[0]!.falls.some((f) => f.method === 'dynamic')).toBe(true)
    expect(found!.after.status).toBe('pass')
  })

  it('offers nothing for what no change of the line mends', () => {
    expect(mendings(plan, 'rescue-plan', plan.lines[0]!.id)).toEqual([])
  })
})

describe('exploring', () => {
  it('ends passing where the free fall does: h = length + D-ring height - height of the rope', () => {
    const plan = read('thin-margins')
    const line = plan.lines[0]!
    const steps = 29
    const x = { input: 'connector-length' as const, from: 0.8, to: 2.2, steps }
    const points: ExplorePoint[] = ended(explore({ plan, line: line.id, x, obstacles: false }))
    const crew = plan.workers.filter((w) => w.line === line.id)
    const post = plan.parts.find((p) => p.id === line.stanchions[0]!.part)!
    const height = post.kind === 'stanchion' ? post.height : Number.NaN
    const dRing = Math.max(...crew.map((w) => w.dRingHeight))
    const longest = plan.basis.maxFreeFall - dRing + height
    expect(points).toHaveLength(steps)
    expect(points.some((p) => p.passes)).toBe(true)
    // The rope sags between stanchions, so that passing ends a little below the length that holds beside one.
    for (const p of points) if (p.x > longest + 1e-6) expect(p.passes, `length ${p.x}`).toBe(false)
  })
})
