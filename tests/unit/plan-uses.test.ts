/** Every kind of part, followed to where a plan uses it: what forgets one kind would keep an old figure or let go a part in use. */
import { describe, expect, it } from 'vitest'
import { planChanges } from '../../src/handover/compare/plans'
import { partFields, partKinds } from '../../src/plan/part-list/fields'
import type { Part, PartKind } from '../../src/plan/types'
import { partIdsOf } from '../../src/plan/uses'
import { partInUse } from '../../src/state/edits/remove'
import { partFigures } from '../../src/state/parts/part-fields'
import { lineKey } from '../../src/state/study/line-key'
import { faultsAfter, type Loose, sample } from './plan-support'

const plan = sample('four-girder-bay')
const partOf = (kind: PartKind): Part => {
  const used = partIdsOf(plan)
  const part = plan.parts.find((p) => p.kind === kind && used.has(p.id))
  if (!part) throw new Error(`the sample uses no ${kind}`)
  return part
}

describe.each(partKinds)('a part of the kind %s', (kind) => {
  const part = partOf(kind)

  it('is in use, and missed where it is gone', () => {
    expect(partInUse(plan, part.id)).toBe(true)
    const faults = faultsAfter((p) => {
      p.parts = p.parts.filter((q: Part) => q.id !== part.id)
    }, 'four-girder-bay')
    expect(faults.map((f) => f.message).join()).toContain(`"${part.id}": there is nothing with that id`)
    const other = plan.parts.find((p) => p.kind !== kind)!
    const swapped = faultsAfter((p) => {
      p.parts = p.parts.map((q: Part) => (q.id === part.id ? { ...other, id: part.id } : q))
    }, 'four-girder-bay')
    expect(swapped.map((f) => f.message).join()).toContain(`"${part.id}": that is a`)
  })

  it('has the same figures in lists, in the window and in the comparison of plans', () => {
    const listed = partFields[kind].filter((f) => f.unit !== null)
    const shown = partFigures[kind].map(({ key, unit, optional }) => [key, unit, optional === true])
    expect(shown).toEqual(listed.map(({ key, unit, optional }) => [key, unit, optional === true]))
  })

  it('asks for a new study of the lines that use it, in each of its figures', () => {
    const user = plan.lines.filter((line) => {
      const workers = plan.workers.filter((w) => w.line === line.id)
      return partIdsOf({ lines: [line], workers }).has(part.id)
    })
    expect(user.length).toBeGreaterThan(0)
    for (const field of partFields[kind].filter((f) => f.unit !== null)) {
      const changed = structuredClone(plan)
      const [head, end] = field.key.split('.') as [string, string | undefined]
      const record = changed.parts.find((p) => p.id === part.id) as Loose
      if (end) record[head] = { ...record[head], [end]: 1 }
      else record[head] = 1
      for (const line of user) expect(lineKey(changed, line)).not.toBe(lineKey(plan, line))
      const [change] = planChanges(plan, changed)
      expect(change?.fields.at(-1)?.unit, field.key).toBe(field.unit)
    }
  })
})

it('tells what no line uses, and keeps the study where only that changes', () => {
  const spare: Part = { ...partOf('hardware'), id: 'spare' }
  const more = { ...plan, parts: [...plan.parts, spare] }
  expect(partInUse(more, 'spare')).toBe(false)
  expect(lineKey(more, plan.lines[0]!)).toBe(lineKey(plan, plan.lines[0]!))
})
