import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { root } from '../../scripts/lib/build.mjs'
import type { Plan } from '../../src/plan/types'
import type { Fall, Results } from '../../src/study/results'
import { expect, test } from './support/test'
import { pixelOf } from './support/window'

test.use({ viewport: { width: 1280, height: 800 } })

interface Hook {
  store: { getState(): { plan: Plan; study: { results: Results | null; whole: boolean } } }
}

/** The figure of the fall in time as it stands in the panel, SI. */
const figure = async (page: Page, name: string): Promise<number> =>
  Number(await page.locator(`[data-figure="${name}"] [data-value]`).getAttribute('data-value'))

const timeNow = async (page: Page): Promise<number> =>
  Number.parseFloat((await page.getByTestId('fall-time').textContent()) ?? '')

/** The study's own fall in time at mid-span of the first span with this corner. */
async function studied(page: Page): Promise<Fall> {
  await page.waitForFunction(
    () => (window as unknown as { fallroom: Hook }).fallroom.store.getState().study.whole,
    undefined,
    { timeout: 60_000 },
  )
  const results = await page.evaluate(
    () => (window as unknown as { fallroom: Hook }).fallroom.store.getState().study.results!,
  )
  return results.lines[0]!.falls.find(
    (f) =>
      f.method === 'dynamic' &&
      f.span === 0 &&
      f.line === 'soft' &&
      f.connector === 'low' &&
      f.grip === 'sliding',
  )!
}

test('a worker is dropped by a click on the rope; at the lowest point the study’s figures stand', async ({
  desk,
  page,
}) => {
  await desk.openSample('thin-margins.plan.json')
  await page.getByRole('tab', { name: 'Fall' }).click()
  const rope = await pixelOf(page, 'rope-grip:L1:0')
  await page.mouse.click(rope.x, rope.y)
  await expect(page.getByTestId('fall-time')).toBeVisible({ timeout: 60_000 })

  // The rest is compared at mid-span, where the study has its own fall.
  const [a, b] = await page.evaluate(() =>
    (window as unknown as { fallroom: Hook }).fallroom.store
      .getState()
      .plan.lines[0]!.stanchions.map((s) => s.station),
  )
  const station = page.getByLabel('Station on the girder')
  const before = await figure(page, 'tension')
  await station.fill(`${(a! + b!) / 2} m`)
  await station.press('Enter')
  const wanted = await studied(page)
  await expect.poll(() => figure(page, 'tension'), { timeout: 60_000 }).toBeCloseTo(wanted.tension!, 0)
  expect(before).toBeGreaterThan(0)
  expect(await figure(page, 'arrestForce')).toBeCloseTo(wanted.arrestForce!, 0)
  expect(await figure(page, 'clearance')).toBeCloseTo(wanted.clearance!, 4)

  await page.getByRole('button', { name: 'To the lowest point' }).click()
  const lowest = await timeNow(page)
  const slider = page.getByLabel('Time of the fall')
  await slider.focus()
  await page.keyboard.press('ArrowRight')
  await expect.poll(() => timeNow(page)).toBeGreaterThan(lowest)
  await page.getByRole('button', { name: 'lowest point', exact: true }).click()
  await expect.poll(() => timeNow(page)).toBeCloseTo(lowest, 3)
})

test('a connector that runs out ends the picture there and says so', async ({ desk, page }) => {
  const plan = JSON.parse(await readFile(join(root, 'samples', 'thin-margins.plan.json'), 'utf8')) as Plan
  for (const part of plan.parts) if (part.kind === 'connector') part.maxExtension = 0.2
  await desk.openText(JSON.stringify(plan))
  await page.getByRole('tab', { name: 'Fall' }).click()
  await page.getByRole('button', { name: 'Drop', exact: true }).click()
  await expect(page.getByTestId('fall-ends')).toContainText('has run out', { timeout: 60_000 })
  await page.getByLabel('Time of the fall').press('End')
  await expect(page.getByRole('button', { name: 'the picture ends' })).toBeVisible()
  const end = await timeNow(page)
  expect(Number(await page.getByLabel('Time of the fall').getAttribute('max'))).toBeCloseTo(end, 2)
})
