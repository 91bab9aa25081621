/**
 * `npm run pictures`: the six views in the three looks, on the largest sample, as pictures to be looked at. They are kept in
 * tests/pictures. `npm run pictures -- 2560x1440 FOLDER` takes another size and puts them elsewhere.
 */
import { mkdir } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import type { Page } from '@playwright/test'
import { inWindow } from '../bench/window'
import { sample } from '../tests/support/sample'

const [given = '1280x800', folder = 'tests/pictures'] = process.argv.slice(2)
const [width = 1280, height = 800] = given.split('x').map(Number)

/** What is done in each view so that it shows what it is for. */
const views: Record<string, (page: Page) => Promise<void>> = {
  Site: (page) => page.getByRole('treeitem').nth(1).click(),
  Rig: (page) => page.getByTestId('findings').locator('button').first().click(),
  Fall: async (page) => {
    await page.getByRole('button', { name: 'Drop', exact: true }).click()
    await page.getByTestId('fall-time').waitFor({ timeout: 60_000 })
    await page.getByRole('button', { name: 'Play', exact: true }).waitFor()
  },
  Clashes: (page) => page.locator('[data-clash]').first().click(),
  Teach: async (page) => {
    await page.getByRole('tab', { name: 'Pretension' }).click()
    await page.getByTestId('lesson-plot').waitFor({ timeout: 60_000 })
  },
  'Hand over': (page) => page.getByRole('button', { name: /^Export Tables/ }).waitFor(),
}

/** Nothing is selected, and the camera stands where it begins. */
const home = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const { store } = window.fallroom as unknown as Hook
    store.setState({ selection: [], finding: null, camera: { n: store.getState().camera.n + 1, to: 'home' } })
  })

interface Hook {
  store: {
    getState(): { camera: { n: number } }
    setState(part: { selection: []; finding: null; camera: { n: number; to: string } }): void
  }
}

/** Nothing has been drawn for a while. */
async function still(page: Page): Promise<void> {
  const frames = (): Promise<string> => page.evaluate(() => document.documentElement.dataset.sceneFrame ?? '')
  for (let [last, same] = ['', 0]; same < 4; ) {
    const now = await frames()
    same = now === last ? same + 1 : 0
    last = now
    await page.waitForTimeout(250)
  }
}

async function take(page: Page): Promise<void> {
  // Then a fall stands at its lowest and nothing is on its way.
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await page.setViewportSize({ width, height })
  for (const theme of ['light', 'dark', 'sunlight']) {
    await page.getByRole('button', { name: 'Theme' }).click()
    await page.getByRole('menuitem', { name: new RegExp(`^${theme}`, 'i') }).click()
    for (const [view, ready] of Object.entries(views)) {
      await page.getByRole('tab', { name: view, exact: true }).click()
      await home(page)
      await ready(page)
      await still(page)
      const name = `${view.toLowerCase().replaceAll(' ', '-')}-${theme}.jpg`
      await page.screenshot({ path: join(resolve(folder), name), type: 'jpeg', quality: 60 })
    }
  }
}

await mkdir(folder, { recursive: true })
await inWindow(sample('four-girder-bay'), take)
