// @vitest-environment happy-dom
import { MantineProvider } from '@mantine/core'
import { act } from 'react'
import { createRoot } from 'react-dom/client'
import { beforeAll, expect, it } from 'vitest'
import { ask, letGo, moveThing, openLesson } from '../../state/teach/teach-actions'
import TeachPanel from './TeachPanel'
import TeachStage from './TeachStage'

/** Every box is as large as a board; nothing is laid out here. */
class Sized {
  constructor(private readonly told: (entries: unknown[]) => void) {}
  observe(): void {
    this.told([{ contentRect: { width: 900, height: 600, top: 0, left: 0 } }])
  }
  unobserve(): void {}
  disconnect(): void {}
}

/** The pretension's falls run in a thread that is not there: that lesson stays at its progress. */
class NoWorker {
  addEventListener(): void {}
  postMessage(): void {}
}

beforeAll(() => {
  Object.assign(globalThis, { ResizeObserver: Sized, Worker: NoWorker, IS_REACT_ACT_ENVIRONMENT: true })
})

it('shows each lesson with its thing, its figures and its plot; a quiz hides them until it is let go', async () => {
  const place = document.body.appendChild(document.createElement('div'))
  await act(async () =>
    createRoot(place).render(
      <MantineProvider>
        <TeachStage />
        <TeachPanel />
      </MantineProvider>,
    ),
  )
  const find = (id: string): Element | null => place.querySelector(`[data-testid="${id}"]`)
  for (const lesson of ['tie-back', 'sag', 'lanyard'] as const) {
    await act(async () => openLesson(lesson))
    expect(find('sentence')?.textContent).not.toBe('')
    expect(find('lesson-figures')?.textContent).toContain('ft')
  }
  await act(async () => openLesson('tie-back'))
  await act(async () => moveThing(30))
  expect(find('lesson-status')?.getAttribute('data-word')).toBe('fails')
  await act(async () => moveThing(50))
  expect(find('lesson-status')?.getAttribute('data-word')).toBe('holds')
  await act(async () => ask(1000))
  expect(find('sentence')).toBeNull()
  await act(async () => letGo())
  expect(find('answer')?.textContent).toContain('more than before')
})
