/** Undo and redo: one entry a gesture. */
import { readFileSync } from 'node:fs'
import { beforeEach, describe, expect, it } from 'vitest'
import { planHash } from '../plan/hash'
import { readPlan } from '../plan/read'
import type { Plan } from '../plan/types'
import { beginDrag, cancelDrag, dragTo, endDrag } from './drag'
import { edit, redo, undo } from './edit'
import { app, history } from './store'

function sample(): Plan {
  const read = readPlan(readFileSync('samples/four-girder-bay.plan.json', 'utf8'))
  if (!read.ok) throw new Error(JSON.stringify(read.faults))
  return read.plan
}

const show = (): void => {
  const plan = sample()
  app.setState({ plan, savedPlan: plan, edited: '', tapeLine: plan.lines[0]?.id ?? null })
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
