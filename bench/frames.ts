/**
 * Frames of a large site without a graphics card: 20 girders, 12 lines, 60 obstacles at 1280x800, the camera turned by the
 * hand. From frame to frame while it turns, from the hand to the frame, and what is drawn once it rests: nothing.
 */
import type { Page } from '@playwright/test'
import type { Plan } from '../src/plan/types'
import { copyGirder } from '../src/state/edits/girder-edits'
import { copyLine } from '../src/state/edits/line-edits'
import { sample } from '../tests/support/sample'
import { watchFrames } from './frame-watch'
import { boxes } from './ground'
import { checksum, size, type Timed } from './harness'
import { inWindow, quantiles } from './window'

const MOVES = size(30, 6)
/** A hand's mouse tells of itself this often, ms. */
const PACE = 16

interface Hook {
  frames(): number
  drawn(): { calls: number; triangles: number }
}

/** The sample with its girder and line repeated, 3 m apart, and boxes until there are 60 obstacles. */
function largeSite(): Plan {
  const plan = sample('thin-margins')
  const [line, girder] = [plan.lines[0], plan.girders[0]]
  if (!line || !girder) throw new Error('the sample has no line')
  const copies = copyGirder(plan, girder.id, size(19, 2), 3)
  for (const id of copies.slice(0, size(11, 1))) copyLine(plan, line.id, id)
  const [x, y, z] = girder.start
  for (const box of boxes()) {
    if (plan.obstacles.length >= 60 || box.kind !== 'box') break
    const [cx, cy, cz] = box.center
    plan.obstacles.push({ ...box, center: [x + cx, y + cy, z - 16 + cz] })
  }
  return plan
}

interface Turned {
  between: number[]
  shown: number[]
  calls: number
  triangles: number
  /** Frames in two seconds of rest. */
  resting: number
}

async function turn(page: Page): Promise<Turned> {
  await page.evaluate('globalThis.__name = (named) => named')
  await page.evaluate(watchFrames)
  const canvas = (await page.locator('canvas').first().boundingBox())!
  const [x, y] = [canvas.x + canvas.width * 0.3, canvas.y + canvas.height - 12]
  await page.mouse.move(x, y)
  await page.mouse.down()
  for (let i = 1; i <= MOVES; i++) {
    const began = performance.now()
    const share = i / MOVES
    await page.mouse.move(x + share * 0.4 * canvas.width, y - 40 * Math.sin(share * Math.PI))
    await page.waitForTimeout(Math.max(0, PACE - (performance.now() - began)))
  }
  const { shown, frames } = (await page.evaluate(() => window.frameWatch)) ?? { shown: [], frames: [] }
  const drawn = await page.evaluate(() => (window.fallroom as unknown as Hook).drawn())
  await page.mouse.up()
  const between = frames.slice(1).map((t, i) => t - frames[i]!)
  return { between, shown, ...drawn, resting: await atRest(page) }
}

/** Once the fine picture of what stands still is drawn. */
async function atRest(page: Page): Promise<number> {
  await page.waitForFunction(() => document.querySelector('canvas')?.dataset.fine === 'true')
  const frames = (): Promise<number> => page.evaluate(() => (window.fallroom as unknown as Hook).frames())
  const before = await frames()
  await page.waitForTimeout(2000)
  return (await frames()) - before
}

export async function bench(): Promise<Timed[]> {
  const turned = await inWindow(largeSite(), turn)
  if (!turned) return []
  const { between, shown, calls, triangles, resting } = turned
  const words = size('20 girders, 12 lines, 60 obstacles', 'a smaller site')
  const drawn = `${calls} calls and ${triangles.toLocaleString('en')} triangles a frame`
  const frames = quantiles(`${words}, camera turned: frame to frame`, between)
  return [
    { ...frames, note: `${frames.note}; ${drawn}` },
    quantiles(`${words}, camera turned: hand to frame`, shown),
    {
      name: 'frames drawn in two seconds of rest',
      ...{ median: resting, low: resting, high: resting },
      checksum: checksum([resting]),
      note: 'a count, not ms',
    },
  ]
}
