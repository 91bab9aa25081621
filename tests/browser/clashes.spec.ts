import { copyFile, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { root } from '../../scripts/lib/build.mjs'
import type { MeshObstacle, Plan, Vec3 } from '../../src/plan/types'
import { expect, test } from './support/test'
import { drag, planOf } from './support/window'

test.use({ viewport: { width: 1100, height: 700 } })

interface Hook {
  project(what: string | Vec3): { x: number; y: number } | null
}

const pixel = async (page: Page, at: Vec3): Promise<{ x: number; y: number }> => {
  const found = await page.evaluate((p) => (window as unknown as { fallroom: Hook }).fallroom.project(p), at)
  if (!found) throw new Error(`${at.join(', ')} is not in the view`)
  return found
}

/** Waits until the camera has come to rest: the same point twice on the same pixel. */
async function stands(page: Page, at: Vec3): Promise<void> {
  let last = ''
  await expect
    .poll(
      async () => {
        const now = JSON.stringify(await pixel(page, at))
        const same = now === last
        last = now
        return same
      },
      { intervals: [300] },
    )
    .toBe(true)
}

const towerOf = (plan: Plan): MeshObstacle =>
  plan.obstacles.find((o) => o.id === 'tower' && o.kind === 'mesh') as MeshObstacle

test('a model is read, dragged under the line until it clashes, its gap read, and the drag undone', async ({
  desk,
  page,
}) => {
  test.setTimeout(300_000)
  await desk.openText(await readFile(join(root, 'samples', 'model-tower.plan.json'), 'utf8'), 'a.json', false)
  // The model is not beside the plan yet: its gap is not known, and the window says so.
  await page
    .getByRole('tab', { name: 'Clashes' })
    .or(page.getByRole('button', { name: 'Clashes' }))
    .first()
    .click()
  const row = page.locator('[data-clash="tower"]')
  await expect(row).toHaveAttribute('data-state', 'unknown', { timeout: 30_000 })
  await copyFile(join(root, 'samples', 'access-tower.glb'), join(desk.folder, 'access-tower.glb'))
  await page.getByRole('button', { name: 'Read it again' }).click()
  await expect(row).toHaveAttribute('data-state', 'beside', { timeout: 30_000 })

  await row.click()
  const before = towerOf(await planOf(page)).at!
  const [x, , z] = before
  // A press that comes while the scene still flies there, or before it shows the model, turns the view and moves nothing:
  // then the hand tries again.
  await expect(async () => {
    await stands(page, before)
    await drag(page, await pixel(page, [x, before[1], z + 2.96]), await pixel(page, [x, 0, z + 2.96]))
    expect(towerOf(await planOf(page)).at).not.toEqual(before)
  }).toPass({ timeout: 150_000 })
  await expect.poll(async () => Math.abs(towerOf(await planOf(page)).at![1])).toBeLessThan(0.4)
  await expect(row).toHaveAttribute('data-state', 'clash', { timeout: 30_000 })
  await expect(page.getByTestId('clash-detail')).toContainText('Into the room by')

  await page.keyboard.press('Control+z')
  await expect.poll(async () => towerOf(await planOf(page)).at).toEqual(before)
  await expect(row).toHaveAttribute('data-state', 'beside', { timeout: 30_000 })
})
