import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { createHeld } from './held'

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

it('shows what waits together and in order: when released, or a while after the first of it', () => {
  const shown: string[] = []
  const held = createHeld<string>((thing) => shown.push(thing), 50)
  held.hold('figures')
  vi.advanceTimersByTime(49)
  held.hold('surface')
  expect(shown).toEqual([])
  vi.advanceTimersByTime(1)
  expect(shown).toEqual(['figures', 'surface'])

  held.hold('more')
  held.release()
  expect(shown).toEqual(['figures', 'surface', 'more'])
  vi.advanceTimersByTime(1000)
  held.release()
  expect(shown).toHaveLength(3)
})

it('forgets what it is told to forget', () => {
  const shown: string[] = []
  const held = createHeld<string>((thing) => shown.push(thing), 50)
  held.hold('figures')
  held.drop()
  vi.advanceTimersByTime(1000)
  expect(shown).toEqual([])
  held.hold('more')
  vi.advanceTimersByTime(50)
  expect(shown).toEqual(['more'])
})
