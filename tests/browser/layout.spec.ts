/** A bay of three girders with two lines, from an empty plan to nothing that fails, with the keyboard alone, actions counted. */
import type { Results } from '../../src/study/results'
import { expect, type Page, test } from './support/test'
import { planOf } from './support/window'

/** Counts what a person does: a shortcut, a word typed into one field, a press of Tab or Enter. */
function hand(page: Page) {
  let actions = 0
  return {
    press: async (key: string): Promise<void> => {
      actions++
      await page.keyboard.press(key)
    },
    type: async (text: string): Promise<void> => {
      actions++
      await page.keyboard.insertText(text)
    },
    count: () => actions,
  }
}

type Hand = ReturnType<typeof hand>

/** Finds a command by its words in the palette and runs it. */
async function run(page: Page, h: Hand, words: string): Promise<void> {
  await h.press('Control+k')
  await expect(page.getByPlaceholder('Find a command or a thing in the plan')).toBeFocused()
  await h.type(words)
  await h.press('Enter')
  await expect(page.getByPlaceholder('Find a command or a thing in the plan')).toBeHidden()
}

const failing = (page: Page): Promise<string[] | null> =>
  page.evaluate(() => {
    const hook = window as unknown as {
      fallroom: {
        store: {
          getState(): { plan: unknown; study: { whole: boolean; ofPlan: unknown; results: Results | null } }
        }
      }
    }
    const { plan, study } = hook.fallroom.store.getState()
    if (!study.whole || study.ofPlan !== plan || !study.results) return null
    return study.results.findings.filter((f) => f.status === 'fail').map((f) => `${f.rule} ${f.subject}`)
  })

/** Writes down for every line how a hanging worker is reached. Each field is one action. */
async function recordRescue(page: Page, h: Hand, lines: number): Promise<void> {
  await run(page, h, 'View: Hand over')
  const press = async (name: string, exact = true): Promise<void> => {
    await page
      .getByRole(name === 'Rescue' ? 'tab' : 'button', { name, exact })
      .first()
      .focus()
    await h.press('Enter')
  }
  const fill = async (label: string | RegExp, text: string): Promise<void> => {
    await page.getByLabel(label).first().focus()
    await h.type(text)
  }
  await press('Rescue')
  for (let i = 0; i < lines; i++) {
    await press('Record the rescue plan')
    await fill('How a hanging worker is reached, from where', 'Ladder raft from the next girder')
    await fill('Gear, and where it is kept', 'Rescue kit in the gang box')
    await fill('People', '2')
    await fill('Minutes until the worker is down or up', '10')
    await fill(/^Planned by/, 'A. Planner')
    await press('Record the rescue plan')
    await expect.poll(async () => (await planOf(page)).records?.length ?? 0).toBe(i + 1)
  }
}

test('three girders and two lines from nothing, by keyboard', async ({ page, desk }) => {
  test.slow()
  await desk.openSample('thin-margins.plan.json')
  const h = hand(page)
  await run(page, h, 'New plan')
  await expect.poll(async () => (await planOf(page)).girders.length).toBe(0)
  await h.press('Shift+G')
  await expect(page.getByLabel('Girders, one a line')).toBeFocused()
  await h.type('G1; 0; 0; 46; 120; 0; 46\nG2; 0; 18; 46; 120; 18; 46\nG3; 0; 36; 46; 120; 36; 46')
  await h.press('Tab')
  await h.press('Tab')
  await h.press('Enter')
  await expect.poll(async () => (await planOf(page)).girders.length).toBe(3)
  await run(page, h, 'Add ground')
  await expect.poll(async () => (await planOf(page)).obstacles.length).toBe(1)
  for (const girder of ['G1', 'G3']) {
    await run(page, h, girder)
    await h.press('Shift+R')
  }
  await expect.poll(async () => (await planOf(page)).lines.length).toBe(2)
  await expect.poll(() => failing(page), { timeout: 60_000 }).not.toBeNull()
  const left = (await failing(page)) ?? []
  expect(left.filter((f) => !f.startsWith('rescue-plan'))).toEqual([])
  await recordRescue(page, h, 2)
  await expect.poll(() => failing(page), { timeout: 60_000 }).toEqual([])
  expect(h.count()).toBeLessThan(60)
})
