/**
 * Every function of this folder that changes a plan: one entry in history, undone and redone to the same plan, and the plan
 * it leaves can be opened again. A new one that is neither tried here nor named as a look-up fails the test.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { planHash } from '../../plan/hash'
import { planFaults, readPlan } from '../../plan/read'
import type { Part, Plan } from '../../plan/types'
import { edit, redo, undo } from '../edit'
import type { Ref } from '../refs'
import { app, history } from '../store'
import { setLimit } from './basis-edits'
import { clipOf, pasteClip, readClip } from './clip'
import { addLineWithCrew } from './crewed-line'
import { duplicateRefs } from './duplicate'
import { addGirder, addLoopRow, copyGirder, setGirderLength } from './girder-edits'
import { addWorker, copyLine } from './line-edits'
import { replaceLoops } from './loop-edits'
import { addBox, addCrossFrame, addDeck, addLane, addLevel, addObstacle, lowestTop } from './obstacle-edits'
import { addProposedLine, keepPart } from './propose-line'
import { removeRef } from './remove'
import { addStanchion, moveStanchion, nudgeStanchion, removeStanchion } from './stanchion-edits'
import { addTieBack, moveFoot, nudgeFoot, removeTieBack, setFootLoop } from './tie-back-edits'
import { middleOf, moveRefs, putPoint, turnRefs } from './transform'

const text = readFileSync('samples/four-girder-bay.plan.json', 'utf8')
const sample = (): Plan => {
  const read = readPlan(text)
  if (!read.ok) throw new Error('the sample can not be read')
  return read.plan
}
const plan = sample()
const need = <T>(item: T | undefined): T => {
  if (item === undefined) throw new Error('the sample has none')
  return item
}
const girder = need(plan.girders[0])
const other = need(plan.girders[1])
const line = need(plan.lines[0])
const post = need(line.stanchions[1])
const tie = need(line.tieBacks[0])
const row = need(girder.loops[0])
const refs: Ref[] = [
  { kind: 'girder', id: girder.id },
  ...plan.obstacles.map((o): Ref => ({ kind: 'obstacle', id: o.id })),
]
const newPart: Part = { ...need(plan.parts[0]), id: 'another-part' }

/** By the name of the function: what is done to a draft. */
const tries: Record<string, (p: Plan) => unknown> = {
  setLimit: (p) => setLimit(p.basis, 'maxFreeFall', 1.7),
  pasteClip: (p) => pasteClip(p, need(readClip(JSON.stringify(clipOf(plan, refs))) ?? undefined), []),
  addLineWithCrew: (p) => addLineWithCrew(p, other.id, 0, 1e3),
  addProposedLine: (p) => addProposedLine(p, other.id, 0, 20),
  keepPart: (p) => keepPart(p, newPart),
  duplicateRefs: (p) => duplicateRefs(p, refs),
  addGirder: (p) => addGirder(p, [0, 50, 10], [30, 50, 10]),
  copyGirder: (p) => copyGirder(p, girder.id, 3, 20),
  addLoopRow: (p) => addLoopRow(p, girder.id),
  setGirderLength: (p) => setGirderLength(need(p.girders[0]), 50),
  copyLine: (p) => copyLine(p, line.id, other.id),
  addWorker: (p) => addWorker(p, line.id),
  replaceLoops: (p) => replaceLoops(p, girder.id, [{ first: 0.2, spacing: 0.4, count: 80, offset: 0 }]),
  addObstacle: (p) => addObstacle(p, { kind: 'ground', elevation: -3 }),
  addLevel: (p) => addLevel(p, 'water'),
  addBox: (p) => addBox(p, [3, 4]),
  addLane: (p) =>
    addLane(p, [
      [0, 0, 0],
      [9, 0, 0],
    ]),
  addCrossFrame: (p) => addCrossFrame(p, [girder.id, other.id], 5),
  addDeck: (p) =>
    addDeck(p, [
      [0, 0],
      [9, 0],
      [9, 9],
    ]),
  removeRef: (p) => removeRef(p, { kind: 'girder', id: girder.id }),
  moveStanchion: (p) => moveStanchion(p, post.id, post.station + 1),
  nudgeStanchion: (p) => nudgeStanchion(p, post.id, -1),
  addStanchion: (p) => addStanchion(p, line.id, post.station + 2),
  removeStanchion: (p) => removeStanchion(p, post.id),
  moveFoot: (p) => moveFoot(p, tie.id, 'strap', row.first + row.spacing * 9),
  nudgeFoot: (p) => nudgeFoot(p, tie.id, 'tensioner', 1),
  setFootLoop: (p) => setFootLoop(p, tie.id, 'strap', 11),
  addTieBack: (p) => addTieBack(p, need(line.stanchions[0]).id),
  removeTieBack: (p) => removeTieBack(p, tie.id),
  putPoint: (p) => putPoint(p, need(refs[0]), 1, [40, 3, 15]),
  moveRefs: (p) => moveRefs(p, refs, [1, 2, 0]),
  turnRefs: (p) => turnRefs(p, refs, 30, middleOf(p, refs)),
}

/** Functions that only look, or make things that one of the above then puts in. */
const looks = [
  ...['basisFigures', 'clipOf', 'readClip', 'copied', 'gapStations', 'girderLength', 'nearest'],
  ...['tidy', 'placeStanchion', 'duplicateGirder', 'shifted', 'newId', 'freeName', 'girderOf'],
  ...['stanchionIn', 'tieBackIn', 'lowestTop', 'siteMiddle', 'groundAt', 'deckBetween', 'laneUnder'],
  ...['proposeFeet', 'firstPart', 'dependentsOf', 'partInUse', 'loopsBeside', 'footLoop', 'middleOf'],
  ...['pointsOf'],
]

const faultsOf = (p: Plan): string[] => planFaults(p).map((f) => f.message)
const hashNow = (): string => planHash(app.getState().plan)

beforeEach(() => {
  app.setState({ plan, savedPlan: plan, edited: '', selection: [] })
  history().clear()
})

describe('every edit', () => {
  it.each(Object.entries(tries))(
    '%s is one entry, and goes back and forth to the same plan',
    (name, change) => {
      const before = hashNow()
      edit(name, (draft) => void change(draft))
      const after = hashNow()
      expect(after).not.toBe(before)
      expect(history().pastStates).toHaveLength(1)
      expect(faultsOf(app.getState().plan)).toEqual(faultsOf(plan))
      undo()
      expect(hashNow()).toBe(before)
      redo()
      expect(hashNow()).toBe(after)
    },
  )

  it('of the folder is tried above or named as a look-up', async () => {
    const files = readdirSync('src/state/edits').filter((f) => f.endsWith('.ts') && !f.includes('.test.'))
    const names: string[] = []
    for (const file of files) {
      const all = (await import(/* @vite-ignore */ resolve('src/state/edits', file))) as Record<
        string,
        unknown
      >
      names.push(...Object.keys(all).filter((k) => typeof all[k] === 'function'))
    }
    const known = new Set([...Object.keys(tries), ...looks])
    expect(names.filter((n) => !known.has(n))).toEqual([])
    expect([...known].filter((n) => !names.includes(n))).toEqual([])
    expect(lowestTop(plan)).toBeGreaterThan(0)
  })
})
