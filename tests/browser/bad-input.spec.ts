/** What a hand can do wrong: typed nonsense, a post pushed where it can not stand, rubbish pasted, too much deleted. */
import type { Plan } from '../../src/plan/types'
import { settled } from './support/findings'
import { expect, type Page, test } from './support/test'
import { drag, planOf } from './support/window'

const row = (page: Page, ref: string) => page.locator(`[data-ref="${ref}"][role=treeitem]`)

const inspector = (page: Page) => page.getByTestId('inspector')

/** One of everything that has figures to type. */
function kinds(plan: Plan): string[] {
  const line = plan.lines[0]
  return [
    `girder:${plan.girders[0]?.id}`,
    `loop-row:${plan.girders[0]?.loops[0]?.id}`,
    `line:${line?.id}`,
    `stanchion:${line?.stanchions[0]?.id}`,
    `tie-back:${line?.tieBacks[0]?.id}`,
    `worker:${plan.workers[0]?.id}`,
    ...plan.obstacles.slice(0, 3).map((o) => `obstacle:${o.id}`),
  ]
}

test('nonsense typed into any figure is refused in place, and the plan stays', async ({ page, desk }) => {
  test.slow()
  await desk.openSample('four-girder-bay.plan.json')
  const plan = await planOf(page)
  let tried = 0
  for (const ref of kinds(plan)) {
    await row(page, ref).click()
    const fields = inspector(page).locator('input')
    for (let i = 0; i < (await fields.count()); i++) {
      const field = fields.nth(i)
      if (!/^-?\d/.test(await field.inputValue())) continue
      const old = await field.inputValue()
      await field.fill('some rope')
      await field.press('Enter')
      const why = inspector(page).getByRole('alert')
      await expect(why, `${ref} field ${i}`).toContainText(`${old} is kept`)
      await field.press('Escape')
      await expect(field).toHaveValue(old)
      tried++
    }
  }
  expect(tried).toBeGreaterThan(30)
  expect(await planOf(page)).toEqual(plan)
})

test('a post on the tape stops at its neighbour and at the end of the girder, and never on a loop', async ({
  page,
  desk,
}) => {
  await desk.openSample('thin-margins.plan.json')
  await settled(page)
  const before = await planOf(page)
  const [line, girder] = [before.lines[0], before.girders[0]]
  const loops = girder?.loops[0]
  const posts = line?.stanchions ?? []
  const [second, third] = [posts[1], posts[2]]
  if (!line || !girder || !loops || !second || !third) throw new Error('the sample has no three stanchions')
  const at = async (id: string): Promise<{ x: number; y: number }> => {
    const box = await page.locator(`[data-handle="stanchion:${id}"]`).boundingBox()
    if (!box) throw new Error(`no handle of ${id}`)
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
  }
  const stationOf = async (id: string): Promise<number> => {
    const found = (await planOf(page)).lines[0]?.stanchions.find((s) => s.id === id)
    return found?.station ?? Number.NaN
  }
  const onLoop = (station: number): number => Math.abs(((station - loops.first) / loops.spacing) % 1)
  const [from, beyond] = [await at(second.id), await at(third.id)]
  await drag(page, from, { x: beyond.x + 120, y: from.y })
  const stopped = await stationOf(second.id)
  expect(stopped).toBeLessThan(third.station)
  expect(stopped).toBeGreaterThan(third.station - 2.5 * loops.spacing)
  expect(onLoop(stopped)).toBeCloseTo(0.5, 2)
  const last = posts.at(-1)
  if (!last) throw new Error('no last stanchion')
  const lastAt = await at(last.id)
  await drag(page, lastAt, { x: 1275, y: lastAt.y })
  const length = Math.hypot(girder.end[0] - girder.start[0], girder.end[1] - girder.start[1])
  expect(await stationOf(last.id)).toBeLessThanOrEqual(length)
  expect(onLoop(await stationOf(last.id))).toBeCloseTo(0.5, 2)
  await page.keyboard.press('Control+z')
  await page.keyboard.press('Control+z')
  expect(await planOf(page)).toEqual(before)
})

test('a girder with a line on it asks before it goes, and comes back whole', async ({ page, desk }) => {
  await desk.openSample('four-girder-bay.plan.json')
  const before = await planOf(page)
  const line = before.lines[0]
  await row(page, `girder:${line?.girder}`).click()
  await page.keyboard.press('Delete')
  const question = page.getByRole('dialog')
  await expect(question).toContainText(line?.name ?? '')
  await question.getByRole('button', { name: 'Keep them' }).click()
  await expect(question).toBeHidden()
  expect(await planOf(page)).toEqual(before)
  await page.keyboard.press('Delete')
  await question.getByRole('button', { name: 'Delete them all' }).click()
  await expect.poll(async () => (await planOf(page)).girders.length).toBe(before.girders.length - 1)
  expect((await planOf(page)).lines.some((l) => l.id === line?.id)).toBe(false)
  await expect(question).toBeHidden()
  await page.keyboard.press('Control+z')
  expect(await planOf(page)).toEqual(before)
})

test('pasting rubbish does nothing', async ({ page, desk, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await desk.openSample('thin-margins.plan.json')
  const before = await planOf(page)
  const rubbish = [
    '',
    'rubbish',
    '{"fallroom":"clip"',
    '{"fallroom":"clip","plan":{},"refs":[]}',
    '\u0000\uffff',
    '[1,2',
  ]
  for (const text of rubbish) {
    await page.evaluate((t) => navigator.clipboard.writeText(t), text)
    await page.keyboard.press('Control+v')
    expect(await planOf(page)).toEqual(before)
  }
  for (const key of ['Shift+G', 'Shift+D', 'Shift+N']) {
    await page.keyboard.press(key)
    const area = page.getByRole('dialog').locator('textarea')
    await expect(area).toBeFocused()
    await area.fill('rubbish; of; every\nkind')
    await expect(
      page
        .getByRole('dialog')
        .getByRole('button')
        .filter({ hasText: /^(Take|Add)/ }),
    ).toBeDisabled()
    await page.keyboard.press('Control+Enter')
    await page.keyboard.press('Escape')
    await expect(page.getByRole('dialog')).toBeHidden()
  }
  expect(await planOf(page)).toEqual(before)
})
