/** Edits by hand: stanchions between loops, feet on loops, copies, proposals. Expected stations are worked out by hand. */
import { produce } from 'immer'
import { describe, expect, it } from 'vitest'
import { planFaults } from '../../plan/read'
import type { Plan } from '../../plan/types'
import { emptyPlan } from '../empty-plan'
import { addLineWithCrew } from './crewed-line'
import { addGirder, copyGirder } from './girder-edits'
import { copyLine } from './line-edits'
import { dependentsOf, removeRef } from './remove'
import { addStanchion, moveStanchion, nudgeStanchion, removeStanchion } from './stanchion-edits'
import { moveFoot, setFootLoop } from './tie-back-edits'

/** Three girders of 120 ft, loops every foot from half a foot: gaps lie at whole feet. A line over the first. */
function bay(): Plan {
  return produce(emptyPlan('us'), (plan) => {
    const first = addGirder(plan, [0, 0, 14], [36.576, 0, 14]) ?? ''
    copyGirder(plan, first, 2, 3.6576)
    addLineWithCrew(plan, first, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY)
  })
}

const FT = 0.3048
const line = (plan: Plan, i = 0) => {
  const found = plan.lines[i]
  if (!found) throw new Error(`no line ${i}`)
  return found
}
const stations = (plan: Plan): number[] => line(plan).stanchions.map((s) => s.station / FT)
const change = (recipe: (plan: Plan) => void, plan = bay()): Plan => produce(plan, recipe)

describe('a proposed line', () => {
  it('is a valid plan with its ends tied back to two neighbouring loops on the far sides', () => {
    const plan = bay()
    expect(planFaults(plan)).toEqual([])
    const { stanchions, tieBacks } = line(plan)
    expect(tieBacks.map((t) => t.stanchion)).toEqual([stanchions[0]?.id, stanchions.at(-1)?.id])
    for (const t of tieBacks) expect(Math.abs(t.strapLoop.index - t.tensionerLoop.index)).toBe(1)
    expect(plan.workers.map((w) => w.line)).toEqual([line(plan).id])
  })

  it('stands between loops, no span over the usual 30 ft', () => {
    const at = stations(bay())
    for (const s of at) expect(s).toBeCloseTo(Math.round(s), 3)
    at.slice(1).forEach((s, i) => {
      expect(s - (at[i] ?? 0)).toBeLessThanOrEqual(30.5)
    })
  })

  it('is refused where the girder is too short for it', () => {
    const plan = produce(emptyPlan('us'), (draft) => {
      addGirder(draft, [0, 0, 14], [1.5, 0, 14])
    })
    expect(produce(plan, (draft) => void addLineWithCrew(draft, 'G1', 0, 1.5))).toEqual(plan)
  })
})

describe('moving a stanchion', () => {
  const second = line(bay()).stanchions[1]?.id ?? ''
  const moved = (to: number, free = false): number => {
    const plan = change((draft) => void moveStanchion(draft, second, to * FT, { free }))
    return (line(plan).stanchions[1]?.station ?? 0) / FT
  }
  it('snaps to the nearest gap', () => expect(moved(20.4)).toBeCloseTo(20, 4))
  it('never onto a loop', () => expect(moved(20.5) % 1).toBeCloseTo(0, 4))
  it('goes anywhere when free', () => expect(moved(20.4, true)).toBeCloseTo(20.4, 4))
  it('stops a gap short of its neighbour', () => {
    const next = stations(bay())[2] ?? 0
    expect(moved(next + 15)).toBeCloseTo(next - 1, 3)
  })
  it('stays where it is for what is no number', () =>
    expect(moved(Number.NaN)).toBeCloseTo(stations(bay())[1] ?? 0, 6))
  it('says what holds it', () => {
    let held: string | null = null
    change((draft) => {
      held = moveStanchion(draft, second, 1000)?.held ?? null
    })
    expect(held).toBe(`held by ${line(bay()).stanchions[2]?.id}`)
  })
  it('nudges by one gap', () => {
    const plan = change((draft) => void nudgeStanchion(draft, second, 1))
    expect(stations(plan)[1]).toBeCloseTo((stations(bay())[1] ?? 0) + 1, 4)
  })
  it('takes the feet along by as many loops', () => {
    const first = line(bay()).stanchions[0]?.id ?? ''
    const before = line(bay()).tieBacks[0]?.strapLoop.index ?? 0
    const at = stations(bay())[0] ?? 0
    const plan = change((draft) => void moveStanchion(draft, first, (at + 3) * FT, { withTieBacks: true }))
    expect(line(plan).tieBacks[0]?.strapLoop.index).toBe(before + 3)
  })
})

describe('stanchions come and go', () => {
  it('between others, with roles kept', () => {
    const plan = change((draft) => void addStanchion(draft, line(draft).id, 15 * FT))
    expect(stations(plan)).toEqual([...stations(plan)].sort((a, b) => a - b))
    expect(
      line(plan)
        .stanchions.map((s) => s.role)
        .filter((r) => r === 'end'),
    ).toHaveLength(2)
    expect(planFaults(plan)).toEqual([])
  })
  it('but two stay', () => {
    const plan = change((draft) => {
      for (const s of [...line(draft).stanchions]) removeStanchion(draft, s.id)
    })
    expect(line(plan).stanchions).toHaveLength(2)
    expect(planFaults(plan)).toEqual([])
  })
})

describe('tie-back feet', () => {
  const id = line(bay()).tieBacks[0]?.id ?? ''
  it('go to the nearest loop and no farther than the row', () => {
    expect(line(change((d) => void moveFoot(d, id, 'strap', 3.6 * FT))).tieBacks[0]?.strapLoop.index).toBe(3)
    expect(line(change((d) => void moveFoot(d, id, 'strap', 1e6))).tieBacks[0]?.strapLoop.index).toBe(119)
  })
  it('refuse a loop that the row does not have', () => {
    const plan = bay()
    let taken = true
    const after = change((d) => {
      taken = setFootLoop(d, id, 'strap', 121)
    }, plan)
    expect([taken, after]).toEqual([false, plan])
  })
})

describe('copying and deleting', () => {
  it('a line to a shorter girder tells what no longer fits', () => {
    const plan = change((draft) => {
      addGirder(draft, [0, 20, 14], [20, 20, 14])
    })
    let misfits: string[] = []
    change((draft) => {
      misfits = copyLine(draft, line(draft).id, draft.girders.at(-1)?.id ?? '').misfits
    }, plan)
    expect(misfits.join(' ')).toMatch(/past the end of the girder|too short/)
  })
  it('a line to a like girder fits as it is', () => {
    let report = { misfits: ['untried'] }
    const plan = change((draft) => {
      report = copyLine(draft, line(draft).id, draft.girders[2]?.id ?? '')
    })
    expect(report.misfits).toEqual([])
    expect(planFaults(plan)).toEqual([])
    expect(line(plan, 1).stanchions.map((s) => s.station)).toEqual(
      line(plan).stanchions.map((s) => s.station),
    )
  })
  it('a girder takes its line and crew along, and says so first', () => {
    const plan = bay()
    const girder = { kind: 'girder', id: plan.girders[0]?.id ?? '' } as const
    expect(dependentsOf(plan, girder)).toEqual([line(plan).name, plan.workers[0]?.name])
    const left = change((draft) => void removeRef(draft, girder), plan)
    expect([left.lines, left.workers]).toEqual([[], []])
    expect(planFaults(left)).toEqual([])
  })
})
