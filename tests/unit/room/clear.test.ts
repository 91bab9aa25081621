import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readPlan } from '../../../src/plan/read'
import type { Plan } from '../../../src/plan/types'
import { type ClearWay, clearWays } from '../../../src/study/clear'
import { study } from '../../../src/study/study'

function sample(): Plan {
  const got = readPlan(readFileSync('samples/thin-margins.plan.json', 'utf8'))
  if (!got.ok) throw new Error(got.faults[0]!.message)
  return got.plan
}

/** A plan whose ground has come up by so much that the room reaches into it. */
function clashing(into: number): { plan: Plan; id: string } {
  const plan = sample()
  plan.lines = plan.lines.slice(0, 1)
  plan.workers = plan.workers.filter((w) => w.line === plan.lines[0]!.id)
  plan.obstacles = [{ id: 'ground', name: 'ground', kind: 'ground', elevation: 0 }]
  const gap = study(plan, { withoutTime: true }).results.obstacles[0]!.gap!
  plan.obstacles = [{ id: 'ground', name: 'ground', kind: 'ground', elevation: gap + into }]
  return { plan, id: 'ground' }
}

function waysOf(into: number): { plan: Plan; ways: ClearWay[] } {
  const { plan, id } = clashing(into)
  const { results } = study(plan, { withoutTime: true })
  expect(results.obstacles[0]!.gap).toBeCloseTo(-into, 6)
  const task = { plan, obstacle: id, line: plan.lines[0]!.id }
  return { plan, ways: [...clearWays(task, results)].flatMap((step) => step.way ?? []) }
}

describe('what would clear an obstacle', () => {
  const { plan, ways } = waysOf(0.12)

  it('finds ways that clear, and the study of the changed plan says the same', () => {
    expect(ways.some((w) => w.clears)).toBe(true)
    for (const way of ways) {
      const again = study(way.plan, { withoutTime: true }).results.obstacles[0]!
      expect(again.gap).toBeCloseTo(way.gap, 6)
      expect(way.clears).toBe(again.gap! >= 0)
    }
  })

  it('takes no more than it needs: a connector a step longer does not clear', () => {
    const way = ways.find((w) => w.kind === 'connector' && w.clears)!
    const longer = structuredClone(way.plan)
    for (const part of longer.parts) {
      if (part.kind === 'connector' && Math.abs(part.length - way.value) < 1e-9) part.length += 0.03
    }
    expect(study(longer, { withoutTime: true }).results.obstacles[0]!.gap).toBeLessThan(0)
  })

  it('leaves the plan as it was', () => {
    expect(plan).toEqual(clashing(0.12).plan)
  })
})
