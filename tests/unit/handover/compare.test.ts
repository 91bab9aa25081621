import { describe, expect, it } from 'vitest'
import { comparePlans, comparisonLists } from '../../../src/handover/compare'
import { fieldChanges } from '../../../src/handover/compare/fields'
import { asBuiltDifferences, asBuiltPlan } from '../../../src/handover/records/as-built'
import { planHash } from '../../../src/plan/hash'
import type { Plan, PlanRecord } from '../../../src/plan/types'
import { study } from '../../../src/study/study'
import { samplePlan } from './made'

const plan = samplePlan()
const studied = (p: Plan) => ({ plan: p, results: study(p, { withoutTime: true }).results })
const base = studied(plan)
const line = plan.lines[0]!

const moved = (by: number): Plan => ({
  ...plan,
  lines: plan.lines.map((l, i) =>
    i > 0
      ? l
      : { ...l, stanchions: l.stanchions.map((s, k) => (k === 1 ? { ...s, station: s.station + by } : s)) },
  ),
})

describe('two plans side by side', () => {
  it('find nothing between a plan and itself, records left aside', () => {
    const record: PlanRecord = {
      id: 'R77',
      kind: 'daily',
      line: line.id,
      at: '2026-03-14',
      by: 'A',
      tension: 4450,
      passed: true,
    }
    const again = studied({ ...plan, records: [...(plan.records ?? []), record] })
    const found = comparePlans(base, { ...again, results: base.results })
    expect(found).toEqual({ same: true, changes: [], findings: [], governing: [] })
  })

  it('say which stanchion moved, by how much, and what it does', () => {
    const after = studied(moved(0.3))
    const found = comparePlans(base, after)
    expect(found.same).toBe(false)
    expect(found.changes).toHaveLength(1)
    expect(found.changes[0]).toMatchObject({
      what: 'stanchion',
      id: line.stanchions[1]!.id,
      of: line.id,
      how: 'changed',
    })
    expect(found.changes[0]!.fields[0]).toMatchObject({ field: 'station', unit: 'm' })
    const lists = comparisonLists(found, plan, 'si')
    expect(lists[0]!.items[0]).toContain('(0.30 m more)')
    const hair = comparisonLists(comparePlans(base, { ...base, plan: moved(0.0003) }), plan, 'us')
    expect(hair[0]!.items[0]).toContain('(less apart than is printed)')
    expect(found.governing.length).toBeGreaterThan(0)
  })

  it('name what was added, removed and changed, and turns for the worse first', () => {
    const after: Plan = {
      ...plan,
      basis: { ...plan.basis, safetyFactor: 50 },
      obstacles: [
        ...plan.obstacles.slice(1),
        { id: 'O-new', name: 'New shed', kind: 'ground', elevation: -90 },
      ],
    }
    const found = comparePlans(base, studied(after))
    const how = found.changes.map((c) => `${c.what} ${c.id} ${c.how}`)
    expect(how).toContain('limits limits changed')
    expect(how).toContain('obstacle O-new added')
    expect(how).toContain(`obstacle ${plan.obstacles[0]!.id} removed`)
    expect(found.findings[0]!.how).toBe('worse')
    expect(found.findings.some((f) => f.rule === 'wire-rope-strength' && f.how === 'worse')).toBe(true)
  })

  it('see a change in any depth of a field, and take the unit of the range it is in', () => {
    expect(fieldChanges({ a: { low: 1, high: 2 } }, { a: { low: 1, high: 3 } })).toEqual([
      { field: 'a.high', before: 2, after: 3, unit: null },
    ])
    expect(fieldChanges({ onset: { low: 1 } }, { onset: { low: 2 } })[0]!.unit).toBe('N')
    expect(fieldChanges({}, { plate: 0.01 })[0]).toMatchObject({ before: undefined, after: 0.01 })
  })
})

describe('as built', () => {
  const stations = Object.fromEntries(line.stanchions.map((s) => [s.id, s.station + 0.05]))
  const record: PlanRecord = {
    id: 'R80',
    kind: 'as-built',
    line: line.id,
    at: '2026-03-14T12:00:00Z',
    by: 'A',
    stations,
    tension: 4000,
  }
  const built: Plan = { ...plan, records: [...(plan.records ?? []), record] }

  it('tells every difference from the design', () => {
    const found = asBuiltDifferences(built, line)!
    for (const d of found.stanchions) expect(d.difference).toBeCloseTo(0.05, 9)
    expect(found.tension.difference).toBeCloseTo(4000 - line.pretension, 9)
    expect(asBuiltDifferences({ ...plan, records: [] }, line)).toBeNull()
  })

  it('is a plan of its own, computed with what was measured', () => {
    const again = asBuiltPlan(built)
    expect(planHash(again)).not.toBe(planHash(built))
    expect(again.lines[0]!.pretension).toBe(4000)
    const installed = study(again, { withoutTime: true }).results.lines[0]!.installed.tension
    expect(installed).toBeCloseTo(4000, 6)
    expect(built.lines[0]!.pretension).toBe(line.pretension)
  })

  it('changes nothing where nothing was measured', () => {
    const none = { ...plan, records: [] }
    expect(asBuiltPlan(none)).toBe(none)
  })
})
