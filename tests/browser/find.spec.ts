import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { root } from '../../scripts/lib/build.mjs'
import type { Plan } from '../../src/plan/types'
import { expect, test } from './support/test'
import { planOf } from './support/window'

test.use({ viewport: { width: 1100, height: 760 } })

/** The sample whose line has lost everything between its ends, and its tie-backs. */
async function bareLine(): Promise<string> {
  const text = await readFile(join(root, 'samples', 'thin-margins.plan.json'), 'utf8')
  const plan = JSON.parse(text) as Plan
  const line = plan.lines[0]!
  line.stanchions = [line.stanchions[0]!, line.stanchions.at(-1)!]
  line.tieBacks = []
  return JSON.stringify(plan)
}

const stations = async (page: Page): Promise<number[]> =>
  (await planOf(page)).lines[0]!.stanchions.map((s) => s.station)

test('an empty line gets a layout that passes, in one step, and undo takes it back', async ({
  desk,
  page,
}) => {
  await desk.openText(await bareLine())
  const before = await stations(page)
  await page.getByRole('button', { name: 'Find', exact: true }).click()
  const dialog = page.getByRole('dialog')
  await dialog.getByRole('button', { name: 'Find the layout' }).click()
  await expect(dialog.getByTestId('found')).toContainText('No layout with fewer stanchions passes: proven', {
    timeout: 80_000,
  })
  await expect(dialog.getByTestId('found')).toContainText('3 stanchions: none passes')
  await dialog.getByRole('button', { name: 'Use this' }).first().click()
  expect((await stations(page)).length).toBe(4)
  await page.keyboard.press('Escape')
  await expect(dialog).toBeHidden()
  await page.keyboard.press('Control+z')
  expect(await stations(page)).toEqual(before)
})

test('spread and exploration say what they computed', async ({ desk, page }) => {
  await desk.openSample('thin-margins.plan.json')
  await page.getByRole('button', { name: 'Find', exact: true }).click()
  const dialog = page.getByRole('dialog')
  await dialog.getByRole('tab', { name: 'Spread' }).click()
  await dialog.getByLabel('Samples').selectOption('200')
  await dialog.getByRole('button', { name: 'Compute the spread' }).click()
  await expect(dialog.getByTestId('spread')).toContainText('200 samples, seed 1', { timeout: 60_000 })
  await dialog.getByRole('tab', { name: 'Explore' }).click()
  await dialog.getByRole('button', { name: 'Compute the margins' }).click()
  await expect(dialog.getByTestId('explored')).toContainText('Passing', { timeout: 60_000 })
})
