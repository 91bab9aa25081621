import type { Page } from '@playwright/test'
import type { Plan, Vec3 } from '../../../src/plan/types'

/** What the window puts on `window.fallroom` for tests. */
interface TestHook {
  store: { getState(): { plan: Plan } }
  /** Where a named object of the scene is on the screen, in CSS pixels of the page. */
  project(what: string | Vec3): { x: number; y: number } | null
}

/** Waits for the window's own announcement that the scene is drawn. */
export async function ready(page: Page): Promise<void> {
  await page.waitForFunction(() => document.documentElement.dataset.scene === 'ready', undefined, {
    timeout: 60_000,
  })
}

/** The plan that the window holds now. */
export function planOf(page: Page): Promise<Plan> {
  return page.evaluate(() => (window as unknown as { fallroom: TestHook }).fallroom.store.getState().plan)
}

/**
 * The pixel of a named object, as soon as it is in view and stays where it is: what the study makes, such as a rope, comes
 * after the first picture, and a panel that opens makes the picture smaller. Fails the test where there is no such object.
 */
export async function pixelOf(page: Page, name: string): Promise<{ x: number; y: number }> {
  const found = await page.waitForFunction(stillPixel, name, { timeout: 20_000, polling: 60 })
  const at = await found.jsonValue()
  if (!at) throw new Error(`There is no object "${name}" in the scene's view.`)
  return at
}

/** Runs in the page: the pixel once it has been the same four times. */
function stillPixel(name: string): { x: number; y: number } | null {
  const hook = window.fallroom as unknown as TestHook & { seen?: { key: string; times: number } }
  const at = hook.project(name)
  const key = at ? `${name} ${at.x.toFixed(1)} ${at.y.toFixed(1)}` : ''
  hook.seen = { key, times: at && hook.seen?.key === key ? hook.seen.times + 1 : 1 }
  return hook.seen.times >= 4 ? at : null
}

/** The pixel of a point of the plan, m. Fails the test where it is not in view. */
export async function pixelAt(page: Page, point: Vec3): Promise<{ x: number; y: number }> {
  const at = await page.evaluate(
    (where) => (window as unknown as { fallroom: TestHook }).fallroom.project(where),
    point,
  )
  if (!at) throw new Error("The point is not in the scene's view.")
  return at
}

/** Drags with the real mouse, in steps, so that every move of the pointer is seen. */
export async function drag(
  page: Page,
  from: { x: number; y: number },
  to: { x: number; y: number },
  steps = 8,
): Promise<void> {
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  await page.mouse.move(to.x, to.y, { steps })
  await page.mouse.up()
}
