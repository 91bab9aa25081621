import { produce } from 'immer'
import { expect, it } from 'vitest'
import { sample } from '../../../tests/support/sample'
import type { Plan } from '../../plan/types'
import { keepEqual, keepShown, sameLine } from './keep-shown'

const plan = sample('four-girder-bay')
const [first, second] = plan.lines.map((l) => l.id) as [string, string]

it('keeps what is shown of lines that the hand has left alone', () => {
  const moved = produce(plan, (draft) => {
    draft.lines[0]!.stanchions[1]!.station += 0.3
  })
  const shown = [{ line: first }, { line: second }]
  const came = [{ line: first }, { line: second }]
  const kept = keepShown(shown, plan, came, moved, (t) => t.line)
  expect(kept[0]).toBe(came[0])
  expect(kept[1]).toBe(shown[1])
})

it.each([
  ['its girder', (d: Plan) => (d.girders[0]!.end[0] += 1)],
  ['a part', (d: Plan) => (d.parts[0]!.source += '.')],
  ['a worker', (d: Plan) => (d.workers[0]!.mass += 1)],
  ['the basis', (d: Plan) => (d.basis.bodyRadius += 0.1)],
])('takes nothing for the same where %s has changed', (_what, change) => {
  const changed = produce(plan, (draft) => void change(draft as Plan))
  expect(sameLine(plan, plan, first)).toBe(true)
  expect(sameLine(plan, changed, first)).toBe(false)
})

it('keeps objects that say the same, and only those', () => {
  const shown = [
    { id: 'a', gap: 1 },
    { id: 'b', gap: 2 },
  ]
  const came = [
    { id: 'b', gap: 3 },
    { id: 'a', gap: 1 },
  ]
  const kept = keepEqual(shown, came, (t) => t.id)
  expect(kept).toEqual(came)
  expect(kept[0]).toBe(came[0])
  expect(kept[1]).toBe(shown[0])
})
