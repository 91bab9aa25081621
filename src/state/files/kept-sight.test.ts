import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { sample } from '../../../tests/support/sample'
import { planHash } from '../../plan/hash'
import { writePlan } from '../../plan/write'
import { app } from '../store'
import { openText } from './document'
import { hiddenWords, sightOf, startKeepingSight } from './kept-sight'

const kept = new Map<string, string>()
const memory = {
  get: (key: string) => kept.get(key) ?? null,
  set: (key: string, value: string) => void kept.set(key, value),
}
vi.stubGlobal('window', { fallroomDesk: { memory } })

const plan = sample('four-girder-bay')
const text = writePlan(plan)
const open = (path: string | null): Promise<boolean> => openText(text, { path, name: 'bay.plan.json' })
const sight = (): object => {
  const { hidden, locked } = app.getState()
  return { hidden, locked }
}

describe('what is hidden and locked', () => {
  let stop = (): void => {}
  beforeEach(() => {
    kept.clear()
    stop = startKeepingSight()
  })
  afterEach(() => stop())

  it('is as it was when the same file is opened again, is told, and is no part of the plan', async () => {
    await open('/a/bay.plan.json')
    app.setState({ hidden: ['G1', 'river'], locked: ['L1'] })
    expect(planHash(app.getState().plan)).toBe(planHash(plan))
    expect(writePlan(app.getState().plan)).toBe(text)
    await open('/b/other.plan.json')
    expect(sight()).toEqual({ hidden: [], locked: [] })
    await open('/a/bay.plan.json')
    expect(sight()).toEqual({ hidden: ['G1', 'river'], locked: ['L1'] })
    expect(app.getState().notice?.text).toContain('2 things are hidden')
  })

  it('goes along where the plan is saved elsewhere, and is forgotten once all is shown', async () => {
    await open('/a/bay.plan.json')
    app.setState({ hidden: ['G1'] })
    app.setState({ file: { ...app.getState().file, path: '/c/copy.plan.json' } })
    expect(sightOf('/c/copy.plan.json', plan).hidden).toEqual(['G1'])
    app.setState({ hidden: [] })
    expect(sightOf('/c/copy.plan.json', plan).hidden).toEqual([])
    expect(hiddenWords(sightOf('/c/copy.plan.json', plan))).toBe('')
  })

  it('names nothing that the plan no longer has, and takes rubbish for nothing', () => {
    kept.set('sight', JSON.stringify([{ place: '/a', hidden: ['gone', 'G2'], locked: [] }, 7, null]))
    expect(sightOf('/a', plan)).toEqual({ hidden: ['G2'], locked: [] })
    kept.set('sight', 'not json')
    expect(sightOf('/a', plan)).toEqual({ hidden: [], locked: [] })
    expect(sightOf(null, plan)).toEqual({ hidden: [], locked: [] })
  })

  it('is kept of the last forty files alone', async () => {
    for (let i = 0; i < 45; i++) {
      app.setState({ file: { ...app.getState().file, path: `/f${i}` }, hidden: ['G1'] })
    }
    expect(JSON.parse(kept.get('sight')!)).toHaveLength(40)
    expect(sightOf('/f44', plan).hidden).toEqual(['G1'])
    expect(sightOf('/f0', plan).hidden).toEqual([])
  })
})
