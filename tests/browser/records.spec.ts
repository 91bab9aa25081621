import type { Page } from '@playwright/test'
import { expect, test } from './support/test'
import { planOf } from './support/window'

// Nothing here looks at the scene, and a small one is drawn faster.
test.use({ viewport: { width: 1200, height: 760 } })

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
  await keep.click()
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
})
