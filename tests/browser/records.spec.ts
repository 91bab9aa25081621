import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { root } from '../../scripts/lib/build.mjs'
import type { Plan } from '../../src/plan/types'
import type { Results } from '../../src/study/results'
import { expect, test } from './support/test'
import { planOf } from './support/window'

// Nothing here looks at the scene, and a small one is drawn faster.
test.use({ viewport: { width: 1200, height: 760 } })

/** As a phone names them; blanks and marks stay. */
const PHOTOS = ['IMG 0412.jpg', 'S1, plate (north).jpeg']

const openRecords = async (page: Page): Promise<void> => {
  await page
    .getByRole('tab', { name: 'Hand over' })
    .or(page.getByRole('button', { name: 'Hand over', exact: true }))
    .first()
    .click()
  await page.getByRole('tab', { name: 'Records' }).click()
}

test('an inspection wants every item and a name; what follows it never changes it', async ({
  desk,
  page,
}) => {
  test.slow()
  await desk.openSample('thin-margins.plan.json')
  await openRecords(page)
  const first = (await planOf(page)).records ?? []
  await page.getByRole('button', { name: 'Inspection', exact: true }).click()
  const keep = page.getByRole('button', { name: 'Record the inspection' })
  await page.getByLabel('Competent person, name').fill('A. Sample')
  await expect(keep).toBeDisabled()
  const passed = page.getByText('passed', { exact: true })
  const count = await passed.count()
  expect(count).toBeGreaterThan(5)
  for (let i = 1; i < count; i++) await passed.nth(i).click()
  await expect(page.getByText('Still wanted: a result for 1 item.')).toBeVisible()
  await page.getByText('not applicable', { exact: true }).first().click()
  for (const name of PHOTOS) {
    const asked = page.waitForEvent('filechooser')
    await page.getByRole('button', { name: 'Name a photo' }).click()
    await (await asked).setFiles({ name, mimeType: 'image/jpeg', buffer: Buffer.from('not looked into') })
    await expect(page.getByText(name)).toBeVisible()
  }
  await keep.click()
  await expect(page.getByTestId('log')).toContainText(`photos ${PHOTOS.join(', ')}`)
  await expect(page.getByTestId('standing')).toContainText('In service; next daily check due')

  await page.getByRole('button', { name: 'Take out of service' }).click()
  await page.getByLabel('Reason').fill('strap frayed')
  await page.getByLabel('Competent person, name').fill('A. Sample')
  await page.getByRole('button', { name: 'Take it out of service' }).click()
  await expect(page.getByTestId('standing')).toContainText('Out of service: strap frayed')
  await page.getByRole('button', { name: 'Retire', exact: true }).click()
  await page.getByLabel('Reason').fill('span is decked')
  await page.getByLabel('Competent person, name').fill('A. Sample')
  await page.getByRole('button', { name: 'Retire it' }).click()
  await expect(page.getByTestId('standing')).toContainText('Retired: span is decked')

  const records = (await planOf(page)).records ?? []
  expect(records.slice(0, first.length)).toEqual(first)
  expect(records.slice(first.length).map((r) => r.kind)).toEqual(['inspection', 'out-of-service', 'retired'])
  const inspection = records[first.length]
  expect(inspection?.kind === 'inspection' && inspection.items.map((i) => i.result)).toEqual([
    'n/a',
    ...Array.from({ length: count - 1 }, () => 'pass'),
  ])
  expect(inspection?.kind === 'inspection' && inspection.photos).toEqual(PHOTOS)
})

/** The sample with its line twice, last looked at three days ago, one worker, and no rescue plan. */
function worn(): Plan {
  const plan: Plan = JSON.parse(readFileSync(join(root, 'samples/thin-margins.plan.json'), 'utf8'))
  const copy = structuredClone(plan.lines[0]!)
  Object.assign(copy, { id: 'L9', name: 'Line with nobody on it' })
  for (const s of copy.stanchions) s.id = `${s.id}-9`
  for (const t of copy.tieBacks) Object.assign(t, { id: `${t.id}-9`, stanchion: `${t.stanchion}-9` })
  const at = new Date(Date.now() - 3 * DAY).toISOString()
  const looked = {
    kind: 'in-service',
    id: 'R1',
    at,
    by: 'A. Sample',
    line: 'L1',
    reason: 'inspected',
  } as const
  return { ...plan, lines: [...plan.lines, copy], workers: plan.workers.slice(0, 1), records: [looked] }
}

const DAY = 24 * 3600 * 1000

/** Status of a rule by subject, as the window's last study has it; also of one without the falls in time. */
const statusOf = (page: Page, rule: string): Promise<string[]> =>
  page.evaluate((id) => {
    type Store = { getState(): { study: { results: Results | null } } }
    const { store } = (window as unknown as { fallroom: { store: Store } }).fallroom
    const found = store.getState().study.results?.findings.filter((f) => f.rule === id) ?? []
    return found.map((f) => `${f.subject} ${f.status}`).sort()
  }, rule)

test('daily checks, what was measured and how a worker is rescued are recorded, and each shows what it changes', async ({
  desk,
  page,
}) => {
  test.slow()
  await desk.openText(JSON.stringify(worn()))
  await openRecords(page)
  const standing = page.getByTestId('standing')
  await expect(standing).toContainText('which is past')
  await page.getByRole('button', { name: 'Daily check' }).click()
  await page.getByLabel('Tension on the indicator').fill('1,000 lbf')
  await page.getByText('Everything passed').click()
  await page.getByLabel('Competent person, name').fill('A. Sample')
  await page.getByRole('button', { name: 'Record the daily check' }).click()
  const daily = (await planOf(page)).records?.at(-1)
  const due = new Date(Date.parse(daily!.at) + DAY).toISOString().slice(0, 16).replace('T', ' ')
  await expect(standing).toHaveText(`In service; next daily check due ${due} UTC`)
  await expect(page.getByTestId('log').getByRole('listitem').first()).toContainText('tension 1,000 lbf')

  const [line] = (await planOf(page)).lines
  await page.getByRole('button', { name: 'As built', exact: true }).click()
  for (const [i, s] of line!.stanchions.entries()) {
    await page.getByLabel(`${s.id}, planned`).fill(`${s.station + (i === 1 ? 0.1 : 0)} m`)
    await page.keyboard.press('Enter')
  }
  await page.getByLabel('Tension, planned').fill('4 kN')
  await page.getByLabel('Measured by, name').fill('A. Sample')
  await page.getByRole('button', { name: 'Record as built' }).click()
  const built = (await planOf(page)).records?.at(-1)
  expect(built).toMatchObject({ kind: 'as-built', line: line!.id, tension: 4000 })
  const moved = line!.stanchions[1]!
  expect(built?.kind === 'as-built' && built.stations[moved.id]).toBeCloseTo(moved.station + 0.1, 9)
  await page.getByRole('button', { name: 'Check what stands' }).click()
  const check = page.getByTestId('as-built-check')
  await expect(check).toContainText(`stanchion ${moved.id} of ${line!.name}: station`, { timeout: 90_000 })
  await expect(check).toContainText('(3 7/8 in more)')
  await expect(check).toContainText('greatest tension: ')

  await page.getByRole('tab', { name: 'Rescue' }).click()
  await expect.poll(() => statusOf(page, 'rescue-plan')).toEqual(['L1 fail', 'L9 fail'])
  await fillRescue(page)
  await expect.poll(() => statusOf(page, 'rescue-plan')).toEqual(['L1 pass', 'L9 fail'])
  await fillRescue(page)
  await expect.poll(() => statusOf(page, 'rescue-plan')).toEqual(['L1 pass', 'L9 pass'])

  await compareWithShifted(page)
  const joined = page.getByRole('img', { name: `Tapes of ${line!.name}, before and after` })
  await expect(joined).toContainText(`${moved.id} moved 1 ft`)
  await expect(page.locator(`[data-label="moved:${moved.id}"]`)).toHaveText(`${moved.id} moved 1 ft`)
  const choice = page.getByRole('radiogroup', { name: 'Changed lines in the scene' })
  await choice.getByText('Before').click()
  await expect.poll(() => inScene(page, `stanchion:${moved.id}`)).toBe(false)
  expect(await inScene(page, 'stanchion:S1-9')).toBe(true)
  await choice.getByText('After').click()
  await expect.poll(() => inScene(page, `stanchion:${moved.id}`)).toBe(true)
  await expect(page.locator(`[data-label="moved:${moved.id}"]`)).toHaveCount(0)
})

/** Against a plan whose first line had its second stanchion a foot nearer to the start. */
async function compareWithShifted(page: Page): Promise<void> {
  const other = worn()
  other.lines[0]!.stanchions[1]!.station -= 0.3048
  await page.getByRole('tab', { name: 'Compare' }).click()
  const asked = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Choose a plan to compare with' }).click()
  const buffer = Buffer.from(JSON.stringify(other))
  await (await asked).setFiles({ name: 'before.plan.json', mimeType: 'application/json', buffer })
  await expect(page.getByTestId('comparison')).toBeVisible({ timeout: 90_000 })
}

/** Whether the scene has a thing of this name. */
const inScene = (page: Page, name: string): Promise<boolean> =>
  page.evaluate(
    (what) =>
      (window as unknown as { fallroom: { project(name: string): unknown } }).fallroom.project(what) !== null,
    name,
  )

/** The form of the first line that has none. */
async function fillRescue(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Record the rescue plan' }).first().click()
  await page.getByLabel('How a hanging worker is reached').fill('Ladder raft from the next girder')
  await page.getByLabel('Gear, and where it is kept').fill('Rescue kit in the gang box')
  await page.getByLabel('People').fill('2')
  await page.getByLabel('Minutes until').fill('10')
  await page.getByLabel('Planned by, name').fill('A. Planner')
  await page.locator('form').getByRole('button', { name: 'Record the rescue plan' }).click()
}
