/** Counts that only the falls in time decide: every layout that is left is tried, so that the claim stays proven. */
import { expect, it } from 'vitest'
import { endPlaces, placesOf } from '../../../src/study/find/places'
import { search } from '../../../src/study/find/search'
import type { FindResult, FindTask, Layout } from '../../../src/study/find/types'
import { verify } from '../../../src/study/find/verify'
import { smallTask } from '../../support/find-oracle'

function run(task: FindTask, most: number): FindResult | null {
  const steps = search(task)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
    if (!step.value.best && (step.value.stanchions ?? 0) > most) return null
  }
}

/** A small case of one choice, and a function that studies any of its layouts. */
function small(seed: number) {
  const { absorbers: _, ...task } = smallTask(seed)
  const line = task.plan.lines.find((l) => l.id === task.line)!
  const places = placesOf(task.plan, line)!
  const end = (index: number, side: 1 | -1) => {
    const at = { station: line.stanchions.at(index)!.station, outside: false }
    return endPlaces(task.plan, line, places, at, side, 1, 1).ends[0]!
  }
  const [a, b] = [end(0, -1), end(-1, 1)]
  const choice = { absorber: line.absorber, connector: null, pretension: line.pretension }
  const layout = (inner: number[]): Layout => {
    const gaps = [a.gap, ...inner, b.gap]
    return { gaps, stations: gaps.map((g) => places.stations[g]!), feet: [a.feet[0]!, b.feet[0]!], choice }
  }
  const judge = (inner: number[], time: boolean) =>
    verify(task.plan, task.line, places.pattern, layout(inner), { time })
  const inner = Array.from({ length: b.gap - a.gap - 1 }, (_x, i) => a.gap + 1 + i)
  return { task, judge, inner }
}

it.each([2])('proves by trying them all that two stanchions do not pass in time (seed %i)', (seed) => {
  const { task, judge, inner } = small(seed)
  const { basis } = task.plan
  basis.safetyFactor = 1
  const energy = judge([], false).candidate!
  const time = judge([], true).candidate!
  expect(time.tension!).toBeGreaterThan(energy.tension! * 1.005)
  const strength = time.governing.wireRopeSafetyFactor! * time.tension!
  basis.safetyFactor = (strength / energy.tension! + strength / time.tension!) / 2
  expect([judge([], false).passes, judge([], true).passes]).toEqual([true, false])
  const answer = run({ ...task, withoutTime: false }, 3)
  const two = answer?.counts.find((c) => c.stanchions === 2)
  if (answer) {
    expect(two).toMatchObject({ status: 'none passes', studied: 1 })
    expect(two!.reasons.map((r) => r.rule)).toContain('wire-rope-strength')
  }
  const passing = inner.filter((g) => judge([g], true).passes)
  const found = answer?.best?.stanchions === 3
  expect(found).toBe(passing.length > 0)
  if (found) expect(answer.claims.fewest).toBe('proven')
})
