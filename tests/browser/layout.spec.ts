/**
 * A bay of three girders with two lines, from an empty plan to nothing that fails, in fewer than sixty actions: once with
 * the mouse, once with the keyboard alone. Every click, key and typed text is counted.
 */
import type { Plan } from '../../src/plan/types'
import { failing, settled } from './support/findings'
import { type Hand, hand, run } from './support/hand'
import { expect, type Page, test } from './support/test'
import { pixelAt, planOf } from './support/window'

const rescue = ['Ladder raft from the next girder', 'Rescue kit in the gang box', '2', '10', 'A. Planner']

const counted = async (page: Page, list: 'girders' | 'lines' | 'obstacles', count: number): Promise<void> =>
  expect.poll(async () => (await planOf(page))[list].length).toBe(count)

const rescued = (page: Page, count: number): Promise<void> =>
  expect.poll(async () => ((await planOf(page)).records ?? []).length).toBe(count)

/** Two lines over three girders of 120 ft, each with its crew, and nothing left but how a hanging worker is reached. */
function expectBay(plan: Plan): void {
  expect(plan.girders).toHaveLength(3)
  for (const { start, end } of plan.girders) expect(end[0] - start[0]).toBeCloseTo(36.576, 3)
  const stood = plan.lines.map((l) => plan.girders.findIndex((g) => g.id === l.girder))
  expect(stood.sort()).toEqual([0, 2])
  for (const line of plan.lines) expect(plan.workers.some((w) => w.line === line.id)).toBe(true)
}

test('three girders and two lines from nothing, by keyboard alone', async ({ page, desk }) => {
  test.slow()
  await desk.openSample('thin-margins.plan.json')
  const h = hand(page)
  await run(page, h, 'New plan')
  await counted(page, 'girders', 0)
  await h.press('Shift+G')
  await expect(page.getByLabel('Girders, one a line')).toBeFocused()
  await h.type('G1; 0; 0; 46; 120; 0; 46\nG2; 0; 18; 46; 120; 18; 46\nG3; 0; 36; 46; 120; 36; 46')
  await h.press('Control+Enter')
  await counted(page, 'girders', 3)
  await run(page, h, 'Add ground')
  await counted(page, 'obstacles', 1)
  for (const [i, girder] of ['G1', 'G3'].entries()) {
    await run(page, h, girder)
    await h.press('Shift+R')
    await counted(page, 'lines', i + 1)
    await run(page, h, 'Record the rescue plan')
    await expect(page.getByLabel('How a hanging worker is reached, from where')).toBeFocused()
    await fillByTab(h)
    await rescued(page, i + 1)
  }
  expect(await settled(page)).toEqual([])
  expectBay(await planOf(page))
  expectFew(h)
})

/** The count stands in the report of the test. */
function expectFew(h: Hand): void {
  test.info().annotations.push({ type: 'actions', description: String(h.count()) })
  expect(h.count()).toBeLessThan(60)
}

async function fillByTab(h: Hand): Promise<void> {
  for (const [i, text] of rescue.entries()) {
    if (i > 0) await h.press('Tab')
    await h.type(text)
  }
  await h.press('Enter')
}

test('three girders and two lines from nothing, with the mouse', async ({ page, desk }) => {
  test.slow()
  await desk.openSample('thin-margins.plan.json')
  const h = hand(page)
  await h.click(page.getByRole('button', { name: 'Fallroom: files and help' }))
  await h.click(page.getByRole('menuitem', { name: 'New plan' }))
  await counted(page, 'girders', 0)
  await drawGirder(page, h)
  await copyGirder(page, h)
  await h.click(page.getByRole('button', { name: 'More' }))
  await h.click(page.getByRole('menuitem', { name: 'Add ground' }))
  await counted(page, 'obstacles', 1)
  await h.click(page.getByRole('tab', { name: 'Rig', exact: true }))
  await h.press('4')
  await drawLine(page, h, 0)
  await drawLine(page, h, 2)
  const left = await settled(page)
  expect(left.filter((f) => !f.startsWith('rescue-plan'))).toEqual([])
  for (const i of [0, 1]) {
    await recordRescue(page, h)
    await rescued(page, i + 1)
  }
  await expect.poll(() => failing(page), { timeout: 60_000 }).toEqual([])
  expectBay(await planOf(page))
  expectFew(h)
})

/** Two clicks on the empty site, then its length as a figure. */
async function drawGirder(page: Page, h: Hand): Promise<void> {
  await h.click(page.getByRole('tab', { name: 'Site', exact: true }))
  await h.click(page.getByRole('toolbar').getByRole('button', { name: 'Girder', exact: true }))
  const box = await page.locator('canvas').first().boundingBox()
  if (!box) throw new Error('There is no picture of the site.')
  await h.click({ x: box.x + box.width * 0.3, y: box.y + box.height * 0.55 })
  await h.click({ x: box.x + box.width * 0.7, y: box.y + box.height * 0.55 })
  await counted(page, 'girders', 1)
  for (const [field, text] of [
    ['Start x', '0'],
    ['Start y', '0'],
    ['End x', '120 ft'],
    ['End y', '0'],
  ] as const) {
    await h.click(page.getByTestId('inspector').getByLabel(field, { exact: true }))
    await h.type(text)
  }
  await h.press('Enter')
}

async function copyGirder(page: Page, h: Hand): Promise<void> {
  await h.click(page.getByRole('toolbar').getByRole('button', { name: 'Copy at spacing' }))
  await h.click(page.getByRole('dialog').getByLabel('Spacing'))
  await h.type('18 ft')
  await h.press('Enter')
  await counted(page, 'girders', 3)
}

/** Two clicks along a girder, on its top as it is seen from above. */
async function drawLine(page: Page, h: Hand, index: number): Promise<void> {
  const { girders, lines } = await planOf(page)
  const girder = girders[index]
  if (!girder) throw new Error('there is no such girder')
  await h.click(page.getByRole('toolbar').getByRole('button', { name: 'Line', exact: true }))
  for (const x of [girder.start[0] + 0.6, girder.end[0] - 0.6])
    await h.click(await pixelAt(page, [x, girder.start[1], girder.start[2]]))
  await counted(page, 'lines', lines.length + 1)
}

/** From the finding that fails to the form, field by field. */
async function recordRescue(page: Page, h: Hand): Promise<void> {
  await h.click(page.locator('[data-rule=rescue-plan][data-status=fail]').first())
  await h.click(page.getByTestId('why').getByRole('button', { name: 'Record the rescue plan' }))
  const fields = page.getByRole('dialog').locator('textarea:not([aria-hidden]), input')
  for (const [i, text] of rescue.entries()) {
    await h.click(fields.nth(i))
    await h.type(text)
  }
  await h.click(page.getByRole('dialog').getByRole('button', { name: 'Record the rescue plan' }))
}
