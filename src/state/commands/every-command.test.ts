/**
 * Every command of the registry: what edits goes back and forth to the same plan, what only shows leaves it alone. A new
 * command is tried here by itself; one that edits only by a tool or a window is named below.
 */
import { readFileSync } from 'node:fs'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { planHash } from '../../plan/hash'
import { readPlan } from '../../plan/read'
import type { Plan } from '../../plan/types'
import { answer } from '../ask'
import { redo, undo } from '../edit'
import { clipOf } from '../edits/clip'
import { everything } from '../everything'
import type { Ref } from '../refs'
import { app, history } from '../store'
import { type Command, canRun } from './command'
import { commands } from './registry'

/** A desk of memory alone: what is copied is remembered there, and no file is ever picked. */
const kept = new Map<string, string>()
const memory = {
  get: (key: string) => kept.get(key) ?? null,
  set: (key: string, value: string) => void kept.set(key, value),
}
const cancelled = async () => ({ ok: false, code: 'cancelled', why: '' })
const desk = new Proxy({ memory }, { get: (have, key) => (key === 'memory' ? have.memory : cancelled) })
vi.stubGlobal('window', { fallroomDesk: desk, matchMedia: () => ({ matches: false }) })
vi.stubGlobal('document', { documentElement: { dataset: {}, style: { setProperty: () => undefined } } })

vi.stubGlobal('navigator', { platform: 'Linux' })
app.subscribe(({ question }) => {
  if (question) queueMicrotask(() => answer('delete'))
})

const text = readFileSync('samples/four-girder-bay.plan.json', 'utf8')
function sample(): Plan {
  const read = readPlan(text)
  if (!read.ok) throw new Error(JSON.stringify(read.faults))
  return read.plan
}
const plan = sample()
const before = planHash(plan)

const show = (selection: Ref[]): void => {
  const tapeLine = plan.lines[0]?.id ?? null
  app.setState({ plan, savedPlan: plan, edited: '', selection, tapeLine, question: null })
  history().clear()
}
const past = (): number => history().pastStates.length
const hashNow = (): string => planHash(app.getState().plan)

beforeEach(() => {
  kept.set('clipboard', JSON.stringify(clipOf(plan, everything(plan))))
})

/** What each command is tried on: one of every kind, and all girders together. */
function selections({ lines, girders }: Plan): Ref[][] {
  const line = lines[0]
  const inner: Ref[] = [
    ...(line?.stanchions.slice(1, 2).map((s): Ref => ({ kind: 'stanchion', id: s.id })) ?? []),
    ...(line?.tieBacks.slice(0, 1).map((t): Ref => ({ kind: 'tie-back', id: t.id, foot: 'strap' })) ?? []),
    ...(girders[1]?.loops.map((r): Ref => ({ kind: 'loop-row', id: r.id })) ?? []),
  ]
  const firsts = new Map(everything(plan).map((ref) => [ref.kind, ref]))
  const two = girders.slice(0, 2).map((g): Ref => ({ kind: 'girder', id: g.id }))
  return [...[...firsts.values(), ...inner].map((ref) => [ref]), two]
}

/** Commands that put a tool in the hand or open a window; what is then done is one of the edits tried beside them. */
const opens = [
  ...['site.drawGirder', 'site.drawDeck', 'site.drawLane', 'rig.drawLine', 'edit.done'],
  ...['site.girderTable', 'site.deckTable', 'site.laneTable', 'site.copyGirder', 'site.loopTable'],
  ...['site.addMesh', 'rig.copyLine', 'rig.find', 'rig.spread', 'rig.explore', 'rig.parts', 'rig.basis'],
  ...['rig.rescue', 'edit.type'],
]
/** Commands that change what is selected, hidden or locked, or only the clipboard. */
const looks = ['edit.selectAll', 'edit.escape', 'edit.copy', 'rig.next', 'rig.back', 'look.lock']
/** History itself: every test here runs them. */
const turns = ['edit.undo', 'edit.redo']
/** Commands that put another plan in the window, and with it another history. */
const files = ['file.new', 'file.open', 'file.sample', 'file.save', 'file.saveAs']

const named = new Set([...opens, ...looks, ...turns, ...files])
const editing = commands.filter((c) => ['Edit', 'Site', 'Rig'].includes(c.group) && !named.has(c.id))
const watching = commands.filter(
  (c) => !editing.includes(c) && !turns.includes(c.id) && !files.includes(c.id),
)

/** Runs a command on a fresh sample with this selected; false where it can not be run. */
async function runOn(record: Command, selection: Ref[]): Promise<boolean> {
  show(selection)
  if (!canRun(record)) return false
  await record.run()
  return true
}

describe('every command that edits', () => {
  it.each(editing.map((c) => [c.id, c] as const))(
    '%s goes back and forth to the same plan',
    async (_, record) => {
      let entries = 0
      for (const selection of selections(plan)) {
        if (!(await runOn(record, selection))) continue
        const after = hashNow()
        expect(past(), `${record.id} on ${selection[0]?.kind}: entries`).toBeLessThanOrEqual(1)
        if (past() === 0) expect(after).toBe(before)
        if (past() === 0) continue
        entries++
        undo()
        expect(hashNow()).toBe(before)
        redo()
        expect(hashNow()).toBe(after)
      }
      expect(
        entries,
        `${record.id} edits nothing that it was tried on: try it on something else`,
      ).toBeGreaterThan(0)
    },
  )

  it.each(watching.map((c) => [c.id, c] as const))('%s leaves plan and history alone', async (_, record) => {
    for (const selection of selections(plan)) {
      if (!(await runOn(record, selection))) continue
      expect([hashNow(), past()]).toEqual([before, 0])
    }
  })

  it('is known by name, so that the lists above have no ghosts', () => {
    const ids = commands.map((c) => c.id)
    expect([...named].filter((id) => !ids.includes(id))).toEqual([])
  })
})
