import type { Page } from '@playwright/test'
import { expect, test } from './support/test'
import { drag } from './support/window'

test.use({ viewport: { width: 1280, height: 800 } })

const figure = async (page: Page, name: string): Promise<number> =>
  Number(await page.locator(`dd[data-figure="${name}"]`).getAttribute('data-value'))

async function middleOf(page: Page): Promise<{ x: number; y: number }> {
  const box = (await page.getByTestId('grip').boundingBox())!
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

/** Drags the foot with the mouse until it stands at an angle, each time nearer: the picture's scale is not known here. */
async function dragTo(page: Page, angle: number): Promise<void> {
  for (let tries = 0; tries < 6; tries++) {
    const [now, foot] = [
      await figure(page, 'Angle from the vertical'),
      await figure(page, 'Foot behind the post'),
    ]
    if (Math.abs(now - angle) < 0.4) return
    const at = await middleOf(page)
    const post = await postAt(page, at.x, foot)
    const wanted = (foot * Math.tan((angle * Math.PI) / 180)) / Math.tan((now * Math.PI) / 180)
    await drag(page, at, { x: post - ((post - at.x) * wanted) / foot, y: at.y }, 4)
  }
}

/** The post's place on the page, from two places of the foot. */
let pixelsPerMetre = 0
async function postAt(page: Page, x: number, foot: number): Promise<number> {
  if (pixelsPerMetre === 0) {
    const from = await middleOf(page)
    await drag(page, from, { x: from.x + 30, y: from.y }, 2)
    const moved = await figure(page, 'Foot behind the post')
    pixelsPerMetre = 30 / (foot - moved)
    await drag(page, await middleOf(page), from, 2)
  }
  return x + foot * pixelsPerMetre
}

test('the foot of a tie-back is dragged from 60 to 25 degrees: the legs pull T/sin a, and 45 turns it', async ({
  desk,
  page,
}) => {
  await desk.openSample('thin-margins.plan.json')
  await page.getByRole('tab', { name: 'Teach' }).click()
  await page.getByLabel('Figures of').selectOption('example')
  const status = page.getByTestId('lesson-status')
  for (const angle of [60, 50, 42, 35, 25]) {
    await dragTo(page, angle)
    const at = await figure(page, 'Angle from the vertical')
    expect(Math.abs(at - angle)).toBeLessThan(2)
    // Closed form of two legs that take it all, statics of a two-bar joint: each T/(2 sin a).
    const pull = await figure(page, 'Pull of the rope')
    const leg = pull / 2 / Math.sin((at * Math.PI) / 180)
    expect(Math.abs((await figure(page, 'Pull in one leg')) / leg - 1)).toBeLessThan(0.005)
    await expect(status).toHaveAttribute('data-word', at >= 45 ? 'holds' : 'fails')
  }
  await expect(page.getByTestId('sentence')).toContainText('Too steep')
})

test('the keys move what the mouse does; a quiz hides, then reveals', async ({ desk, page }) => {
  await desk.openSample('thin-margins.plan.json')
  await page.getByRole('tab', { name: 'Teach' }).click()
  await page.getByLabel('Figures of').selectOption('example')
  await page.getByRole('tab', { name: 'Sag' }).click()
  await page.getByTestId('grip').press('ArrowUp')
  await expect.poll(() => figure(page, 'Angle from the horizontal')).toBe(10.5)
  await page.getByRole('button', { name: 'Quiz' }).click()
  await expect(page.getByTestId('sentence')).toHaveCount(0)
  await expect(page.getByTestId('lesson-plot')).toHaveCount(0)
  await page.getByRole('radio', { name: 'More' }).click()
  await page.getByRole('button', { name: 'Let go' }).click()
  await expect(page.getByTestId('answer')).toContainText('The way was right')
  // 5 degrees: 1/(2 sin 5) = 5.74, published as about 6 to 1.
  expect(await figure(page, 'Tension over arrest force')).toBeCloseTo(5.737, 2)
  await page.getByRole('button', { name: 'Reset' }).click()
  await expect.poll(() => figure(page, 'Angle from the horizontal')).toBe(10)
})
