import { spawnSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { unzipSync } from 'fflate'
import Papa from 'papaparse'
import { root } from '../../scripts/lib/build.mjs'
import { calculationPackage } from '../../src/handover/package'
import { letters } from '../../src/handover/pdf/letters'
import type { Plan } from '../../src/plan/types'
import type { Results } from '../../src/study/results'
import { hasPoppler, inputOf, readBack } from '../unit/handover/made'
import { edgesOf, glbSurface, stlSurface, volumeOf } from './support/solid'
import { expect, test } from './support/test'
import { planOf } from './support/window'

// Nothing here looks at the scene, and a small one is drawn faster.
test.use({ viewport: { width: 1200, height: 760 } })

const SAMPLE = 'thin-margins.plan.json'

const show = async (page: Page, tab: string): Promise<void> => {
  await page
    .getByRole('tab', { name: 'Hand over' })
    .or(page.getByRole('button', { name: 'Hand over', exact: true }))
    .first()
    .click()
  await page.getByRole('tab', { name: tab }).click()
}

/** Share of the pixels of a canvas that carry ink. */
const inkOf = (page: Page, name: string): Promise<number> =>
  page.getByRole('img', { name }).evaluate((node) => {
    const canvas = node as HTMLCanvasElement
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height)
    let dark = 0
    for (let i = 0; i < data.length; i += 4) if (data[i]! < 128) dark++
    return dark / (data.length / 4)
  })

test('a paper shows its pages and is exported as the file it will be', async ({ desk, page }) => {
  // Falls in time are studied twice here, in the window and for the paper, beside a scene drawn by the processor.
  test.slow()
  await desk.openSample(SAMPLE)
  await show(page, 'Papers')
  await page.getByRole('checkbox', { name: 'Español' }).check()
  const [line] = (await planOf(page)).lines
  await page.getByRole('button', { name: `Pages of Hoja para la cuadrilla, ${line!.name}` }).click()
  const first = page.getByRole('img', { name: 'Page 1 of' })
  await expect(first).toHaveAttribute('data-drawn', 'yes', { timeout: 60_000 })
  expect(await inkOf(page, 'Page 1 of')).toBeGreaterThan(0.01)
  await page.keyboard.press('Escape')

  const results = JSON.parse(new TextDecoder().decode(await exported(page, 'Results, JSON'))) as Results
  expect(results.format).toBe('fallroom-results')
  expect(results.lines[0]!.falls.some((f) => f.method === 'dynamic')).toBe(true)

  // The fall room as other programs get it: closed, and as large as the results say.
  const room = unzipSync(await exported(page, 'Fall room, GLB and STL'))
  const stl = stlSurface(room['fall-room.stl']!)
  const glb = await glbSurface(room['fall-room.glb']!)
  expect(edgesOf(glb)).toEqual({ most: 1, open: 0 })
  expect(edgesOf(stl).open).toBe(0)
  for (const surface of [stl, glb]) {
    // The surface lies within 20 mm of the room.
    expect(Math.abs(volumeOf(surface) / results.rooms!.plan.volume! - 1)).toBeLessThan(0.01)
  }
  const tables = unzipSync(await exported(page, 'Tables, CSV'))
  const gaps = Papa.parse<Record<string, string>>(
    new TextDecoder().decode(Object.entries(tables).find(([name]) => name.endsWith('gaps.csv'))?.[1]),
    { header: true, skipEmptyLines: true },
  )
  expect(gaps.errors).toEqual([])
  expect(gaps.data.map((row) => [row.id, row['gap (m)'] === '' ? null : Number(row['gap (m)'])])).toEqual(
    results.obstacles.map((o) => [o.id, o.gap]),
  )
})

/** The bytes of a paper's export. */
async function exported(page: Page, title: string): Promise<Uint8Array> {
  // One paper is made at a time: until the one before is done, the button waits.
  const button = page.getByRole('button', { name: `Export ${title}` })
  await expect(button).toBeEnabled({ timeout: 120_000 })
  const download = page.waitForEvent('download', { timeout: 60_000 })
  await button.click()
  const chunks: Buffer[] = []
  for await (const chunk of await (await download).createReadStream()) chunks.push(chunk as Buffer)
  return new Uint8Array(Buffer.concat(chunks))
}

test('an approval is for one state of the plan, is stale after a change, and no undo takes it out', async ({
  desk,
  page,
}) => {
  await desk.openSample(SAMPLE)
  await show(page, 'Records')
  await page.getByRole('button', { name: 'Record an approval' }).click()
  await page.getByRole('checkbox', { name: 'I am the qualified person' }).check()
  await page.getByLabel('Qualified person, name').fill('M. Sample')
  const keep = page.getByRole('button', { name: 'Record the approval' })
  await expect(keep).toBeEnabled({ timeout: 60_000 })
  await keep.click()
  await expect(page.getByTestId('approval')).toContainText('for exactly this plan')

  await page.evaluate(() => {
    type Store = { getState(): { plan: Plan }; setState(part: { plan: Plan }): void }
    const { store } = (window as unknown as { fallroom: { store: Store } }).fallroom
    store.setState({ plan: { ...store.getState().plan, title: 'Changed afterwards' } })
  })
  await expect(page.getByTestId('approval')).toContainText('Stale')
  await expect(page.getByText('changed since it was approved')).toBeVisible()
  await staleOnPaper(await planOf(page), desk.folder)
  await page.keyboard.press('Control+z')
  await expect(page.getByTestId('approval')).toContainText('for exactly this plan')
  await page.keyboard.press('Control+z')
  expect((await planOf(page)).records?.filter((r) => r.kind === 'approval')).toHaveLength(1)
})

/** What a terminal and the calculation package say of a plan whose approval was for another state of it. */
async function staleOnPaper(plan: Plan, folder: string): Promise<void> {
  const file = join(folder, 'changed.plan.json')
  writeFileSync(file, JSON.stringify(plan))
  const verb = ['--import', 'tsx', 'src/cli/check.ts', file, '--energy-only']
  const printed = spawnSync(process.execPath, verb, { encoding: 'utf8', cwd: root }).stdout
  expect(printed).toContain('stale: the approval by M. Sample')
  if (!hasPoppler) return
  const input = inputOf(plan)
  const { text } = await readBack(calculationPackage(input, letters(input.fonts)))
  expect(text).toContain('stale: recorded by M. Sample')
}

test('a daily check that did not pass takes the line out of service, and is asked for a name', async ({
  desk,
  page,
}) => {
  await desk.openSample(SAMPLE)
  await show(page, 'Records')
  await page.getByRole('button', { name: 'Put back in service' }).click()
  await page.getByLabel('Reason').fill('inspected on paper')
  await page.getByLabel('Competent person, name').fill('A. Sample')
  await page.getByRole('button', { name: 'Put it back in service' }).click()
  await expect(page.getByTestId('standing')).toContainText('In service')

  await page.getByRole('button', { name: 'Daily check' }).click()
  const keep = page.getByRole('button', { name: 'Record the daily check' })
  await page.getByText('Something did not').click()
  await expect(keep).toBeDisabled()
  await page.getByLabel('Competent person, name').fill('A. Sample')
  await keep.click()
  await expect(page.getByTestId('standing')).toContainText('Out of service: the daily check')
  await expect(page.getByTestId('log')).toContainText('daily check did not pass')
})
