/** Moving by hand what stands about in plan: together, onto one another's corners, and never into what can not be. */
import { beforeEach, describe, expect, it } from 'vitest'
import { planHash } from '../plan/hash'
import { planFaults } from '../plan/read'
import type { Plan, Vec3 } from '../plan/types'
import { undo } from './edit'
import { addLineWithCrew } from './edits/crewed-line'
import { addGirder } from './edits/girder-edits'
import { addBox, addDeck } from './edits/obstacle-edits'
import { emptyPlan } from './empty-plan'
import type { Ref } from './refs'
import { beginShift, cancelShift, endShift, pointTo, shiftTo, takenWith } from './shift'
import { app, history } from './store'

/** Two girders of 30 m, 5 m apart, a line on the first, a box and a deck beside them. */
function site(): Plan {
  const plan = emptyPlan('si')
  addGirder(plan, [0, 0, 10], [30, 0, 10])
  addGirder(plan, [0, 5, 10], [30, 5, 10])
  addLineWithCrew(plan, 'G1', 0, 30)
  addBox(plan, [10, -10])
  addDeck(plan, [
    [0, 8],
    [6, 8],
    [6, 12],
    [0, 12],
  ])
  return plan
}
const [first, second, box, deck]: Ref[] = [
  { kind: 'girder', id: 'G1' },
  { kind: 'girder', id: 'G2' },
  { kind: 'obstacle', id: 'O1' },
  { kind: 'deck', id: 'D1' },
]
const now = (): Plan => app.getState().plan
const start = (id: string): Vec3 | undefined => now().girders.find((g) => g.id === id)?.start

beforeEach(() => {
  const plan = site()
  app.setState({ plan, savedPlan: plan, units: 'si', view: 'site', selection: [], locked: [] })
  history().clear()
})

/** One drag of what is selected, from press to release. */
function drag(refs: Ref[], by: Vec3): void {
  beginShift('move')
  shiftTo(refs, [by[0] / 2, by[1] / 2, by[2]])
  shiftTo(refs, by)
  endShift()
}

describe('what is taken', () => {
  it('is all that is selected and not locked', () => {
    app.setState({ selection: [first!, second!, box!, deck!], locked: ['G2'] })
    expect(takenWith(first!).map((r) => r.id)).toEqual(['G1', 'O1', 'D1'])
    expect(takenWith(second!)).toEqual([])
  })
  it('is nothing that is not selected, and no girder outside Site', () => {
    expect(takenWith(first!)).toEqual([])
    app.setState({ selection: [first!, box!], view: 'rig' })
    expect([takenWith(first!), takenWith(box!).map((r) => r.id)]).toEqual([[], ['O1']])
  })
})

describe('a shift', () => {
  it('moves all together by whole steps, in one entry that undo takes back', () => {
    const before = planHash(now())
    drag([first!, box!, deck!], [1.02, -2.01, 0])
    expect(start('G1')).toEqual([1, -2, 10])
    expect(now().obstacles[0]).toMatchObject({ center: [11, -12, expect.any(Number)] })
    expect(now().decks?.[0]?.outline[0]).toEqual([1, 6])
    expect(history().pastStates).toHaveLength(1)
    undo()
    expect(planHash(now())).toBe(before)
  })
  it('brings an end onto one that stands near by', () => {
    drag([second!], [30.12, -5.08, 0])
    expect(start('G2')).toEqual([30, 0, 10])
  })
  it('lifts, decks too', () => {
    drag([first!, deck!], [0, 0, 0.52])
    expect([start('G1')?.[2], now().decks?.[0]?.elevation]).toEqual([10.5, 10.5])
  })
  it('given up leaves nothing', () => {
    beginShift('move')
    shiftTo([first!], [3, 3, 0])
    cancelShift()
    expect([start('G1'), history().pastStates.length]).toEqual([[0, 0, 10], 0])
  })
})

describe('an end or a corner', () => {
  const put = (ref: Ref, index: number, at: Vec3, keys = {}): string | null => {
    beginShift('move an end')
    const why = pointTo(ref, index, at, keys)
    endShift()
    return why
  }
  it('goes to the grid and keeps its elevation', () => {
    expect(put(first!, 1, [33.04, 0.97, 2])).toBeNull()
    expect(now().girders[0]?.end).toEqual([33, 1, 10])
  })
  it('goes onto another end, and with Shift stays square to its own', () => {
    expect(put(first!, 1, [29.8, 4.7, 10])).toBeNull()
    expect(now().girders[0]?.end).toEqual([30, 5, 10])
    expect(put(second!, 1, [35, 6.3, 10], { shift: true })).toBeNull()
    expect(now().girders[1]?.end).toEqual([35, 5, 10])
  })
  it('stays where the girder would end short of its line, and says why', () => {
    const before = now()
    expect(put(first!, 1, [12, 0, 10])).toEqual(expect.any(String))
    expect(now()).toBe(before)
    expect(planFaults(now())).toEqual([])
  })
  it('stays where the sides of a deck would cross', () => {
    const before = now()
    expect(put(deck!, 0, [9, 10, 10])).toMatch(/runs across/)
    expect(now()).toBe(before)
  })
})
