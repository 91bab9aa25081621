/** How smoothly a fall is scrubbed and played without a graphics card: from each move of the hand to the frame that shows it. */
import type { Page } from '@playwright/test'
import { sample } from '../tests/support/sample'
import { watchFrames } from './frame-watch'
import { ONCE, type Timed } from './harness'
import { inWindow, quantiles } from './window'

const MOVES = ONCE ? 10 : 80
/** A hand's mouse tells of itself this often, ms. */
const PACE = 16

async function scrub(page: Page): Promise<{ shown: number[]; played: number[] }> {
  await page.getByRole('tab', { name: 'Fall' }).click()
  await page.getByRole('button', { name: 'Drop', exact: true }).click()
  await page.getByTestId('fall-time').waitFor({ timeout: 60_000 })
  await page.evaluate('globalThis.__name = (named) => named')
  await page.evaluate(watchFrames)
  const slider = (await page.getByLabel('Time of the fall').boundingBox())!
  const y = slider.y + slider.height / 2
  await page.mouse.move(slider.x + 10, y)
  await page.mouse.down()
  for (let i = 1; i <= MOVES; i++) {
    const began = performance.now()
    await page.mouse.move(slider.x + 10 + ((slider.width - 20) * i) / MOVES, y)
    await page.waitForTimeout(Math.max(0, PACE - (performance.now() - began)))
  }
  await page.mouse.up()
  const shown = await page.evaluate(() => window.frameWatch?.shown ?? [])
  return { shown, played: await play(page) }
}

/** Gaps between frames while the fall plays at its own pace. */
async function play(page: Page): Promise<number[]> {
  await page.getByRole('button', { name: 'To the start' }).click()
  await page.evaluate(() => {
    window.frameWatch!.frames.length = 0
  })
  await page.getByRole('button', { name: 'Play', exact: true }).click()
  await page.waitForTimeout(ONCE ? 500 : 3000)
  const frames = await page.evaluate(() => window.frameWatch!.frames)
  return frames.slice(1).map((at, i) => at - frames[i]!)
}

export async function bench(): Promise<Timed[]> {
  const got = await inWindow(sample('thin-margins'), scrub)
  if (!got) return []
  return [
    quantiles('scrubbing a fall: from the hand to the picture', got.shown),
    quantiles('playing it: between two frames', got.played),
  ]
}
