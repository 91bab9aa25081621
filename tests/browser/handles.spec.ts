/** Handles in the picture: a girder's end by its knob, figures typed beside them, several things together, what is locked stays. */
import type { Plan, Vec3 } from '../../src/plan/types'
import { expect, type Page, test } from './support/test'
import { drag, pixelAt, planOf } from './support/window'

const row = (page: Page, ref: string) => page.locator(`[data-ref="${ref}"][role=treeitem]`)

const centre = (plan: Plan, id: string): Vec3 => {
  const box = plan.obstacles.find((o) => o.id === id)
  if (box?.kind !== 'box') throw new Error(`no box ${id}`)
  return box.center
}

async function inSite(page: Page): Promise<void> {
  await page.getByRole('tab', { name: 'Site', exact: true }).click()
  await page.keyboard.press('4')
}

test('an end of a girder goes where the hand takes it, and undo takes it back', async ({ page, desk }) => {
  await desk.openSample('four-girder-bay.plan.json')
  const before = await planOf(page)
  const girder = before.girders.at(-1)
  if (!girder) throw new Error('the sample has no girder')
  await row(page, `girder:${girder.id}`).click()
  await inSite(page)
  await page.waitForFunction(
    (name) => (window as unknown as { fallroom: { names(): string[] } }).fallroom.names().includes(name),
    `point:girder:${girder.id}:1`,
  )
  const [x, y, z] = girder.end
  const from = await pixelAt(page, girder.end)
  await drag(page, from, await pixelAt(page, [x - 0.9, y + 0.6, z]), 12)
  const end = (await planOf(page)).girders.at(-1)?.end ?? [0, 0, 0]
  expect(Math.hypot(end[0] - x + 0.9, end[1] - y - 0.6)).toBeLessThan(0.4)
  expect(end[2]).toBe(z)
  await page.keyboard.press('Control+z')
  expect(await planOf(page)).toEqual(before)
  await page.mouse.click(from.x, from.y)
  await typedBeside(page, 'x', '36 m')
  expect((await planOf(page)).girders.at(-1)?.end).toEqual([36, y, z])
  await page.keyboard.press('Control+z')
  expect(await planOf(page)).toEqual(before)
})

test('what stands beside a stanchion is typed in its place', async ({ page, desk }) => {
  await desk.openSample('thin-margins.plan.json')
  const before = await planOf(page)
  const id = before.lines[0]?.stanchions[1]?.id ?? ''
  const station = async () => (await planOf(page)).lines[0]?.stanchions[1]?.station
  const was = await station()
  await row(page, `stanchion:${id}`).click()
  await page.locator('[data-label=value]').click()
  await typedBeside(page, 'Station', '20 ft 6 in')
  expect(await station()).toBeCloseTo(6.2484, 4)
  await page.keyboard.press('Control+z')
  expect(await station()).toBe(was)
  await page.getByTestId('tape').locator(`[data-handle="stanchion:${id}"]`).focus()
  await page.keyboard.press('Enter')
  await typedBeside(page, 'Station', '21 ft')
  expect(await station()).toBeCloseTo(6.4008, 4)
  await page.keyboard.press('Control+z')
  expect(await planOf(page)).toEqual(before)
})

/** Nonsense is refused with the word why and nothing changes; a figure is taken, and its box is gone. */
async function typedBeside(page: Page, label: string, figure: string): Promise<void> {
  const box = page.getByTestId('in-place')
  const before = await planOf(page)
  await expect(box.getByLabel(label, { exact: true })).toBeFocused()
  await page.keyboard.insertText('a good deal')
  await page.keyboard.press('Enter')
  await expect(box.getByRole('alert')).toContainText('is kept')
  expect(await planOf(page)).toEqual(before)
  await box.getByLabel(label, { exact: true }).fill(figure)
  await page.keyboard.press('Enter')
  await expect(box).toBeHidden()
}

test('what is selected moves together, what is locked stays', async ({ page, desk }) => {
  await desk.openSample('much-to-put-right.plan.json')
  const before = await planOf(page)
  const box = before.obstacles.find((o) => o.kind === 'box')
  const lane = before.obstacles.find((o) => o.kind === 'lane')
  if (!box || lane?.kind !== 'lane') throw new Error('the sample has no box and lane')
  await inSite(page)
  await row(page, `obstacle:${box.id}`).click()
  await row(page, `obstacle:${lane.id}`).click({ modifiers: ['Control'] })
  const [x, y, z] = centre(before, box.id)
  const top: Vec3 = [x, y, z + (box.kind === 'box' ? box.size[2] / 2 : 0)]
  const from = await pixelAt(page, top)
  const to = await pixelAt(page, [top[0], top[1] - 2, top[2]])
  await drag(page, from, to, 12)
  const after = await planOf(page)
  const moved = centre(after, box.id)[1] - y
  expect(moved).toBeLessThan(-1.5)
  const path = after.obstacles.find((o) => o.id === lane.id)
  expect(
    path?.kind === 'lane' &&
      lane.path.every((p, i) => Math.abs((path.path[i]?.[1] ?? 0) - p[1] - moved) < 1e-3),
  ).toBe(true)
  await page.keyboard.press('Control+z')
  expect(await planOf(page)).toEqual(before)
  await page.keyboard.press('l')
  await drag(page, from, to, 6)
  expect(await planOf(page)).toEqual(before)
})
