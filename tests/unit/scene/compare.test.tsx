// @vitest-environment happy-dom
import { create } from '@react-three/test-renderer'
import type { Object3D } from 'three'
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { comparePlans } from '../../../src/handover/compare'
import { changedLines } from '../../../src/handover/compare/lines'
import type { Plan } from '../../../src/plan/types'
import { movedStanchions } from '../../../src/scene/compare/moved'
import { OtherLines } from '../../../src/scene/compare/OtherLines'
import { stanchionWires, strapWires } from '../../../src/scene/compare/wires'
import { notes } from '../../../src/scene/labels/notes'
import { labels } from '../../../src/scene/labels/registry'
import { Ropes } from '../../../src/scene/parts/Ropes'
import { Stanchions } from '../../../src/scene/parts/Stanchions'
import { TieBacks } from '../../../src/scene/parts/TieBacks'
import { beside, endBeside, type OtherPlan } from '../../../src/state/compare/beside'
import { app } from '../../../src/state/store'
import { noStudy, type StudyState } from '../../../src/state/study-state'
import { study } from '../../../src/study/study'
import { samplePlan } from '../handover/made'

const SHIFT = 0.6096
/** The sample's line twice, so that two lines can differ; nothing lies below, which makes the studies quick. */
const now: Plan = twice(samplePlan())
const [first, second] = now.lines
/** Both lines differ: on the first a stanchion and a strap's loop, on the second its last stanchion was not there. */
const old: Plan = structuredClone(now)
old.lines[0]!.stanchions[1]!.station -= SHIFT
old.lines[0]!.tieBacks[0]!.strapLoop.index += 1
old.lines[1]!.stanchions.splice(1, 1)

let other: OtherPlan
let shown: Pick<StudyState, 'results' | 'details'>

beforeAll(() => {
  const [before, after] = [old, now].map((p) => study(p, { withoutTime: true }))
  const comparison = comparePlans(
    { plan: old, results: before!.results },
    { plan: now, results: after!.results },
  )
  shown = { results: after!.results, details: after!.details }
  const { results, details } = before!
  other = { plan: old, results, details, lines: changedLines(old, now, comparison) }
})

beforeEach(() => {
  app.setState({ plan: now, hidden: [], tapeLine: first!.id, study: { ...noStudy, ...shown } })
  beside.setState({ other, show: 'both' })
})

let unmount: (() => Promise<void>) | null = null
afterEach(async () => {
  await unmount?.()
  unmount = null
  endBeside()
})

async function drawn(): Promise<Object3D> {
  const renderer = await create(
    <>
      <Stanchions />
      <TieBacks />
      <Ropes />
      <OtherLines />
    </>,
  )
  unmount = () => renderer.unmount()
  return renderer.scene.instance
}

const inked = (scene: Object3D, name: string): boolean => scene.getObjectByName(name)?.visible === true
const dashed = (scene: Object3D, name: string): boolean =>
  'DASHED' in (scene.getObjectByName(name) as unknown as { material: { defines: object } }).material.defines

describe('two plans in one scene', () => {
  it('names both lines as changed', () => {
    expect([...other.lines].sort()).toEqual([first!.id, second!.id].sort())
  })

  it('shows what was beside what is, dashed, for every line that changed', async () => {
    const scene = await drawn()
    for (const id of other.lines) {
      expect(inked(scene, `before:${id}:rope`), id).toBe(true)
      expect(dashed(scene, `before:${id}:rope`)).toBe(true)
      expect(inked(scene, `before:${id}:underside`), id).toBe(true)
      expect(scene.getObjectByName(`rope:${id}`), id).toBeDefined()
    }
    expect(inked(scene, `before:${first!.id}:stanchions`)).toBe(true)
    expect(inked(scene, `before:${first!.id}:tie-backs`)).toBe(true)
    // Nothing of the second line's tie-backs moved: they would only lie on themselves.
    expect(inked(scene, `before:${second!.id}:tie-backs`)).toBe(false)
    expect(notes.getState().all.get('beside')).toContain('Dashed and hollow: before')
  })

  it('writes how far each stanchion moved', async () => {
    await drawn()
    const [moved, added] = [first!.stanchions[1]!.id, second!.stanchions[1]!.id]
    expect(labels.getState().all.get(`moved:${moved}`)?.text).toBe(`${moved} moved 2 ft`)
    expect(labels.getState().all.get(`moved:${added}`)?.text).toBe(`${added} new`)
  })

  it('shows only what was, or only what is', async () => {
    beside.setState({ show: 'before' })
    const before = await drawn()
    expect(before.getObjectByName(`rope:${first!.id}`)).toBeUndefined()
    expect(before.getObjectByName(`stanchion:${first!.stanchions[0]!.id}`)).toBeUndefined()
    expect(before.getObjectByName(`tie-back:${first!.tieBacks[0]!.id}:strap`)).toBeUndefined()
    // Also the tie-backs that did not move, for the open plan's are not there.
    expect(inked(before, `before:${second!.id}:tie-backs`)).toBe(true)
    await unmount?.()
    beside.setState({ show: 'after' })
    const after = await drawn()
    expect(after.getObjectByName(`before:${first!.id}:rope`)).toBeUndefined()
    expect(after.getObjectByName(`rope:${first!.id}`)).toBeDefined()
  })
})

describe('the wires of another plan', () => {
  it('stand where that plan has its stanchions', () => {
    const [gone, here] = [old, now].map((p) =>
      stanchionWires(p, first!.id, new Set([first!.stanchions[1]!.id])),
    )
    expect(gone!.length).toBe(here!.length)
    // The girder runs along x: every point is as far aside as the stanchion moved.
    for (let i = 0; i < gone!.length; i += 3) expect(here![i]! - gone![i]!).toBeCloseTo(SHIFT, 9)
  })

  it('are none for tie-backs that lie where they lay', () => {
    expect(strapWires(now, first!.id, now)).toEqual([])
    // One leg of the changed tie-back: the two long edges of its band.
    expect(strapWires(old, first!.id, now)).toHaveLength(2 * 6)
  })

  it('tell stanchions that moved from those that are gone or new', () => {
    const [moved] = movedStanchions(old, now, first!.id)
    expect(moved).toMatchObject({ stanchion: first!.stanchions[1]!.id, how: 'moved' })
    expect(moved!.by).toBeCloseTo(SHIFT, 9)
    expect(movedStanchions(now, old, second!.id).map((m) => m.how)).toEqual(['gone'])
    expect(movedStanchions(now, now, first!.id)).toEqual([])
  })
})

function twice(plan: Plan): Plan {
  const [line] = plan.lines
  const [worker] = plan.workers
  const copy = structuredClone(line!)
  copy.id = 'second'
  copy.stanchions.forEach((s) => {
    s.id = `second-${s.id}`
  })
  copy.tieBacks.forEach((t) => {
    Object.assign(t, { id: `second-${t.id}`, stanchion: `second-${t.stanchion}` })
  })
  return {
    ...plan,
    lines: [line!, copy],
    workers: [worker!, { ...worker!, id: 'other', line: copy.id }],
    obstacles: [],
  }
}
