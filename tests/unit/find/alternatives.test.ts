import { expect, it } from 'vitest'
import { alternativesOf } from '../../../src/study/find/compare'
import { search } from '../../../src/study/find/search'
import type { Candidate } from '../../../src/study/find/types'
import { smallTask } from '../../support/find-oracle'

it('keeps other counts and other parts side by side, each with what limits it', () => {
  const { absorbers: _, ...task } = smallTask(1)
  const line = task.plan.lines[0]!
  const pretensions = [line.pretension, line.pretension * 0.8]
  const steps = search({ ...task, absorbers: [line.absorber, null], pretensions })
  let step = steps.next()
  while (!step.done) step = steps.next()
  const { best, alternatives } = step.value
  expect(alternatives[0]).toEqual(best)
  expect(new Set(alternatives.map((a) => a.stanchions))).toEqual(
    new Set([best!.stanchions, best!.stanchions + 1]),
  )
  expect(new Set(alternatives.map((a) => JSON.stringify(a.layout.choice))).size).toBeGreaterThan(1)
  for (const a of alternatives) {
    expect(a.limiting.length).toBeGreaterThan(0)
    expect(a.limiting[0]!.share).toBeGreaterThanOrEqual(0)
    expect(a.clearance).toBeGreaterThan(0)
  }
})

it('keeps the best of every kind before the rest of one kind', () => {
  const one = (stanchions: number, pretension: number, clearance: number): Candidate => ({
    layout: {
      gaps: [],
      stations: [],
      feet: [] as never,
      choice: { absorber: null, connector: null, pretension },
    },
    stanchions,
    parts: 9,
    clearance,
    tension: 9000,
    governing: {} as never,
    gap: null,
    limiting: [],
    warnings: [],
    verified: 'energy',
  })
  const many = Array.from({ length: 12 }, (_, i) => one(3, 1000, 4 + 0.1 * i))
  const kept = alternativesOf([...many, one(4, 1000, 3), one(3, 2000, 6)], ['clearance'])
  expect(kept.length).toBe(8)
  expect(kept[0]!.clearance).toBe(4)
  expect(kept.map((c) => [c.stanchions, c.layout.choice.pretension, c.clearance])).toContainEqual([
    4, 1000, 3,
  ])
  expect(kept.map((c) => [c.stanchions, c.layout.choice.pretension, c.clearance])).toContainEqual([
    3, 2000, 6,
  ])
})
