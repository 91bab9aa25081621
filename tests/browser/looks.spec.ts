/** Every look in Site and Rig holds against axe-core's serious faults: contrast, names, roles. */
import AxeBuilder from '@axe-core/playwright'
import { expect, test } from './support/test'

for (const theme of ['light', 'dark', 'sunlight'] as const) {
  test(`no serious fault of access, ${theme} look`, async ({ page, desk }) => {
    await desk.openSample('much-to-put-right.plan.json')
    await page.getByRole('button', { name: 'Theme' }).click()
    await page.getByRole('menuitem', { name: new RegExp(`^${theme}`, 'i') }).click()
    await expect(page.locator('html')).toHaveAttribute('data-theme', theme)
    await page.getByTestId('findings').locator('button').first().click()
    for (const view of ['Site', 'Rig']) {
      await page.getByRole('tab', { name: view, exact: true }).click()
      const { violations } = await new AxeBuilder({ page }).exclude('canvas').analyze()
      const serious = violations.filter((v) => v.impact === 'serious' || v.impact === 'critical')
      expect(serious.map((v) => `${view} ${v.id}: ${v.nodes[0]?.html.slice(0, 160)}`)).toEqual([])
    }
  })
}
