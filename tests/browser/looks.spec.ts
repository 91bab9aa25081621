/** Every view and every window in front of it, in every look, holds against axe-core's serious faults: contrast, names, roles. */
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import AxeBuilder from '@axe-core/playwright'
import { root } from '../../scripts/lib/build.mjs'
import type { Plan, Vec3 } from '../../src/plan/types'
import { expect, type Page, test } from './support/test'

const views = ['Site', 'Rig', 'Fall', 'Clashes', 'Teach', 'Hand over']

/** Windows in front, by the words of their command in the palette; each closes on Escape. */
const windows = [
  ...['Type or paste girders', 'Type or paste a deck', 'Type or paste a road or rail lane'],
  ...['Parts library', 'Limits and margins', 'Record the rescue plan of the line'],
  ...[
    'Copy the line to other girders',
    'Find a layout for the line',
    'Keys',
    'What this does and does not do',
  ],
]

/** Looked for in the whole page, or in one part of it. */
async function serious(page: Page, where: string, part = 'body'): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).include(part).exclude('canvas').analyze()
  return violations
    .filter((v) => v.impact === 'serious' || v.impact === 'critical')
    .map((v) => `${where}: ${v.id}: ${v.nodes[0]?.html.slice(0, 160)}`)
}

/** All windows in one look; in the others, whose colours come from the same table, half of them each. */
const looks = { light: windows, dark: windows.slice(0, 5), sunlight: windows.slice(5) } as const

/** The sample with a second girder, so that a line can be copied to it. */
async function twoGirders(): Promise<string> {
  const plan = JSON.parse(
    await readFile(join(root, 'samples', 'much-to-put-right.plan.json'), 'utf8'),
  ) as Plan
  const [girder] = plan.girders
  if (!girder) throw new Error('the sample has no girder')
  const beside = ([x, y, z]: Vec3): Vec3 => [x, y + 12, z]
  plan.girders.push({
    ...girder,
    id: 'G2',
    name: 'Second girder',
    start: beside(girder.start),
    end: beside(girder.end),
    loops: girder.loops.map((row) => ({ ...row, id: `${row.id}-2` })),
  })
  return JSON.stringify(plan)
}

// Each look by whichever browser is free: one after the other they are the end that all wait for.
test.describe.configure({ mode: 'parallel' })

for (const theme of ['light', 'dark', 'sunlight'] as const) {
  test(`no serious fault of access, ${theme} look`, async ({ page, desk }) => {
    test.slow()
    await desk.openText(await twoGirders())
    await page.getByRole('button', { name: 'Theme' }).click()
    await page.getByRole('menuitem', { name: new RegExp(`^${theme}`, 'i') }).click()
    await expect(page.locator('html')).toHaveAttribute('data-theme', theme)
    await page.getByTestId('findings').locator('button').first().click()
    const faults: string[] = []
    for (const view of views) {
      await page.getByRole('tab', { name: view, exact: true }).click()
      await expect(page.getByRole('tab', { name: view, exact: true })).toHaveAttribute(
        'aria-selected',
        'true',
      )
      faults.push(...(await serious(page, view)))
    }
    await page.getByRole('tab', { name: 'Rig', exact: true }).click()
    for (const words of looks[theme]) faults.push(...(await inFront(page, words)))
    expect(faults).toEqual([])
  })
}

async function inFront(page: Page, words: string): Promise<string[]> {
  const search = page.getByPlaceholder('Find a command or a thing in the plan')
  await page.keyboard.press('Control+k')
  await search.fill(words)
  await page.keyboard.press('Enter')
  await expect(search).toBeHidden()
  await expect(page.getByRole('dialog')).toBeVisible()
  const faults = await serious(page, words, '[role=dialog]')
  await page.keyboard.press('Escape')
  await expect(page.getByRole('dialog')).toBeHidden()
  return faults
}
