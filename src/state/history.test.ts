/** Undo and redo: one entry a gesture, every command undone and redone back to the same plan. */
import { readFileSync } from 'node:fs'
import { beforeEach, describe, expect, it } from 'vitest'
import { planHash } from '../plan/hash'
import { readPlan } from '../plan/read'
import type { Plan } from '../plan/types'
import { answer } from './ask'
import { canRun } from './commands/command'
import { commands } from './commands/registry'
import { beginDrag, cancelDrag, dragTo, endDrag } from './drag'
import { edit, redo, undo } from './edit'
import { everything } from './everything'
import type { Ref } from './refs'
import { app, history } from './store'

function sample(): Plan {
  const read = readPlan(readFileSync('samples/four-girder-bay.plan.json', 'utf8'))
  if (!read.ok) throw new Error(JSON.stringify(read.faults))
  return read.plan
}

const show = (selection: Ref[] = []): void => {
  const plan = sample()
  app.setState({ plan, savedPlan: plan, edited: '', selection, tapeLine: plan.lines[0]?.id ?? null })
  history().clear()
}

const past = (): number => history().pastStates.length
const hashNow = (): string => planHash(app.getState().plan)
const firstPost = (): { id: string; station: number } => {
  const post = app.getState().plan.lines[0]?.stanchions[1]
  if (!post) throw new Error('the sample has no second stanchion')
  return post
}

beforeEach(() => show())

describe('a drag', () => {
  it('is one entry, and undo takes all of it back', () => {
    const before = hashNow()
    const { id, station } = firstPost()
    beginDrag({ kind: 'stanchion', id })
    for (let i = 1; i <= 20; i++) dragTo({ kind: 'stanchion', id }, station + i * 0.05)
    endDrag()
    expect(past()).toBe(1)
    expect(firstPost().station).toBeGreaterThan(station)
    undo()
    expect(hashNow()).toBe(before)
    expect(past()).toBe(0)
  })

  it('that comes back to where it began leaves no entry', () => {
    const { id, station } = firstPost()
    beginDrag({ kind: 'stanchion', id })
    dragTo({ kind: 'stanchion', id }, station + 1)
    dragTo({ kind: 'stanchion', id }, station)
    endDrag()
    expect(past()).toBe(0)
  })

  it('given up leaves the plan as it was and redo as it was', () => {
    const { id, station } = firstPost()
    edit('change the title', (plan) => {
      plan.title = 'another'
    })
    undo()
    const before = hashNow()
    beginDrag({ kind: 'stanchion', id })
    dragTo({ kind: 'stanchion', id }, station + 1)
    cancelDrag()
    expect(hashNow()).toBe(before)
    redo()
    expect(app.getState().plan.title).toBe('another')
  })
})

/** What each command is tried on: one of every kind, and all girders together. */
function selections(plan: Plan): Ref[][] {
  const line = plan.lines[0]
  const inner: Ref[] = [
    ...(line?.stanchions.slice(1, 2).map((s): Ref => ({ kind: 'stanchion', id: s.id })) ?? []),
    ...(line?.tieBacks.slice(0, 1).map((t): Ref => ({ kind: 'tie-back', id: t.id, foot: 'strap' })) ?? []),
    ...(plan.girders[1]?.loops.map((r): Ref => ({ kind: 'loop-row', id: r.id })) ?? []),
  ]
  const firsts = new Map(everything(plan).map((ref) => [ref.kind, ref]))
  const girders = plan.girders.slice(0, 2).map((g): Ref => ({ kind: 'girder', id: g.id }))
  return [...[...firsts.values(), ...inner].map((ref) => [ref]), girders]
}

const editing = commands.filter(
  (c) => ['Edit', 'Site', 'Rig'].includes(c.group) && !/undo|redo|paste|copy|cut|addMesh/.test(c.id),
)

describe('every command that edits', () => {
  it.each(editing.map((c) => [c.id, c] as const))(
    '%s goes back and forth to the same plan',
    async (_, record) => {
      for (const selection of selections(sample())) {
        show(selection)
        if (!canRun(record)) continue
        const before = hashNow()
        const done = record.run()
        answer('delete')
        await done
        const after = hashNow()
        expect(past(), `${record.id} on ${selection[0]?.kind}: entries`).toBeLessThanOrEqual(1)
        if (past() === 0) continue
        undo()
        expect(hashNow()).toBe(before)
        redo()
        expect(hashNow()).toBe(after)
      }
    },
  )
})
