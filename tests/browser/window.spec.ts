/** The window in the hand: drag a stanchion on the tape and in the scene, read a finding, refuse nonsense, undo. */
import type { Plan } from '../../src/plan/types'
import { expect, type Page, test } from './support/test'
import { drag, pixelOf, planOf } from './support/window'

const station = async (page: Page, id: string): Promise<number> => {
  const plan: Plan = await planOf(page)
  const found = plan.lines.flatMap((l) => l.stanchions).find((s) => s.id === id)
  if (!found) throw new Error(`no stanchion ${id}`)
  return found.station
}

const middle = async (page: Page, selector: string): Promise<{ x: number; y: number }> => {
  const box = await page.locator(selector).first().boundingBox()
  if (!box) throw new Error(`${selector} is not on the page`)
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

/** Until the whole study of the plan as it stands is shown. */
const studied = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => {
    const hook = window as unknown as {
      fallroom: { store: { getState(): { plan: unknown; study: { ofPlan: unknown } } } }
    }
    const { plan, study } = hook.fallroom.store.getState()
    return study.ofPlan === plan
  })

test('a stanchion dragged on the tape goes from gap to gap, numbers follow, undo takes it back', async ({
  page,
  desk,
}) => {
  await desk.openSample('four-girder-bay.plan.json')
  await studied(page)
  const plan = await planOf(page)
  const line = plan.lines[0]
  const post = line?.stanchions[1]
  const row = plan.girders.find((g) => g.id === line?.girder)?.loops[0]
  if (!line || !post || !row) throw new Error('the sample has no line')
  await page.locator(`[data-ref="line:${line.id}"][role=treeitem]`).click()
  const clearance = page.locator('[data-figure=clearance]')
  const before = await clearance.textContent()
  const from = await middle(page, `[data-handle="stanchion:${post.id}"]`)
  const next = await middle(page, `[data-handle="stanchion:${line.stanchions[2]?.id}"]`)
  const perMetre = (next.x - from.x) / ((line.stanchions[2]?.station ?? 0) - post.station)
  await drag(page, from, { x: from.x + perMetre * row.spacing * 6, y: from.y })
  expect(await station(page, post.id)).toBeCloseTo(post.station + 6 * row.spacing, 3)
  await studied(page)
  await page.locator(`[data-ref="line:${line.id}"][role=treeitem]`).click()
  await expect(clearance).not.toHaveText(before ?? '')
  await page.keyboard.press('Control+z')
  expect(await planOf(page)).toEqual(plan)
})

test('the head in the scene is the same stanchion', async ({ page, desk }) => {
  await desk.openSample('thin-margins.plan.json')
  await studied(page)
  const line = (await planOf(page)).lines[0]
  const [post, next] = [line?.stanchions[1], line?.stanchions[2] ?? line?.stanchions[0]]
  if (!post || !next) throw new Error('the sample has no inner stanchion')
  await page.locator(`[data-ref="stanchion:${post.id}"][role=treeitem]`).click()
  const from = await pixelOf(page, `stanchion:${post.id}`)
  const towards = await pixelOf(page, `stanchion:${next.id}`)
  await drag(
    page,
    from,
    { x: from.x + (towards.x - from.x) * 0.25, y: from.y + (towards.y - from.y) * 0.25 },
    12,
  )
  expect(await station(page, post.id)).not.toBeCloseTo(post.station, 2)
  await page.keyboard.press('Control+z')
  expect(await station(page, post.id)).toBe(post.station)
})

test('a chosen finding opens its sum, and a note never changes it', async ({ page, desk }) => {
  await desk.openSample('much-to-put-right.plan.json')
  await studied(page)
  const counts = page.getByTestId('counts')
  const fails = await counts.locator('[data-status=fail]').textContent()
  const first = page.getByTestId('findings').locator('button[data-status=fail]').first()
  await first.click()
  const why = page.getByTestId('why')
  await expect(why).toContainText('Limit from:')
  await why.getByText('Note what was decided').click()
  await page.getByLabel('What was decided and why').fill('Engineer of record looks at the loops')
  await page.getByLabel('By', { exact: true }).fill('Q. Person')
  await page.getByRole('button', { name: 'Keep the note' }).click()
  await expect(why).toContainText('Engineer of record looks at the loops')
  await expect(first).toHaveAttribute('data-status', 'fail')
  await expect(counts.locator('[data-status=fail]')).toHaveText(fails ?? '')
})

test('nonsense typed for a station is refused in place and the old value stays', async ({ page, desk }) => {
  await desk.openSample('thin-margins.plan.json')
  const plan = await planOf(page)
  const id = plan.lines[0]?.stanchions[1]?.id ?? ''
  await page.locator(`[data-ref="stanchion:${id}"][role=treeitem]`).click()
  const field = page.getByTestId('inspector').getByLabel('Station')
  for (const typed of ['twelve', '-3 ft', '4000 ft']) {
    await field.fill(typed)
    await field.press('Enter')
    await expect(page.getByTestId('inspector').getByRole('alert')).toContainText('is kept')
    expect(await planOf(page)).toEqual(plan)
    await field.press('Escape')
  }
})
