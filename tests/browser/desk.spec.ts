import { readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { root } from '../../scripts/lib/build.mjs'
import type { Plan } from '../../src/plan/types'
import { startKillable } from './support/killable'
import { expect, test } from './support/test'
import { planOf, ready } from './support/window'

// Nothing here looks at the scene, and a small one is drawn faster.
test.use({ viewport: { width: 1000, height: 620 } })

const sampleText = () => readFile(join(root, 'samples', 'thin-margins.plan.json'), 'utf8')

/** Changes the plan as any command does: through the store. */
function retitle(page: Page, title: string): Promise<void> {
  return page.evaluate((name) => {
    type Store = { getState(): { plan: Plan }; setState(part: { plan: Plan }): void }
    const { store } = (window as unknown as { fallroom: { store: Store } }).fallroom
    store.setState({ plan: { ...store.getState().plan, title: name } })
  }, title)
}

const titleIn = async (path: string) => JSON.parse(await readFile(path, 'utf8')).title

test('a plan is opened, changed and saved; the last copy stays beside it', async ({
  desk,
  page,
  browser,
}) => {
  const path = await desk.openText(await sampleText())
  const before = await titleIn(path)
  const stranger = await browser.newPage()
  expect((await stranger.goto(page.url()))?.status()).toBe(403)
  await stranger.close()

  await retitle(page, 'Changed here')
  await page.keyboard.press('Control+s')
  await expect.poll(() => titleIn(path)).toBe('Changed here')
  expect(await titleIn(`${path}.bak`)).toBe(before)

  await writeFile(path, (await sampleText()).replace(before, 'Changed there'))
  await retitle(page, 'Changed here again')
  await page.keyboard.press('Control+s')
  await expect(page.getByRole('dialog')).toContainText('changed by someone else')
  expect(await titleIn(path)).toBe('Changed there')
  await page.getByRole('button', { name: 'Do not save' }).click()
  expect((await planOf(page)).title).toBe('Changed here again')
})

test('what was not saved before a kill is offered at the next start', async ({ desk, page }) => {
  const path = join(desk.folder, 'plan.json')
  await writeFile(path, await sampleText())
  const before = await titleIn(path)
  const first = await startKillable(path, desk.home)
  await page.goto(first.address)
  await ready(page)
  await retitle(page, 'Not saved yet')
  const journal = join(desk.home, 'journal')
  await expect
    .poll(async () => (await readdir(journal)).filter((name) => name.endsWith('.json')).length)
    .toBe(1)
  await first.kill()
  await expect(page.getByText('has stopped')).toBeVisible()

  const second = await startKillable(path, desk.home)
  await page.goto('about:blank')
  await page.goto(second.address)
  await page.getByRole('button', { name: 'Bring it back' }).click()
  await expect.poll(async () => (await planOf(page)).title).toBe('Not saved yet')
  expect(await titleIn(path)).toBe(before)
  await ready(page)
  await page.keyboard.press('Control+s')
  await expect.poll(() => titleIn(path)).toBe('Not saved yet')
  await page.goto('about:blank')
  await second.kill()
})

test('a plan with script in every text runs none of it', async ({ desk, page }) => {
  const attack =
    '<img src=x onerror="window.owned=1"><script>window.owned=1</script>javascript:window.owned=1'
  const plan = JSON.parse(await sampleText())
  for (const list of [plan.girders, plan.lines, plan.workers, plan.obstacles, plan.parts]) {
    for (const one of list) one.name = attack
  }
  plan.title = plan.site = plan.notes = attack
  await desk.openText(JSON.stringify(plan))
  expect((await planOf(page)).title).toBe(attack)
  expect(await page.evaluate(() => 'owned' in window)).toBe(false)
  expect(await page.locator('img[src="x"]').count()).toBe(0)
})

test('a file that is no plan is refused with its reasons, and the open plan stays', async ({
  desk,
  page,
}) => {
  await desk.openText('{"format":"fallroom-plan","version":1,"girders":"none"}', 'broken.json', false)
  const dialog = page.getByRole('dialog')
  await expect(dialog).toContainText('broken.json could not be opened')
  await expect(dialog).toContainText('girders')
})
