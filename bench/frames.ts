/**
 * Frames of a large site without a graphics card: 20 girders, 12 lines, 60 obstacles at 1280x800, the camera turned by the
 * hand. From frame to frame while it turns, from the hand to the frame, from letting go to the fine picture, and what is
 * drawn once it rests: nothing. Then the same with a model of a million triangles among the obstacles.
 */
import type { Page } from '@playwright/test'
import type { Plan } from '../src/plan/types'
import { copyGirder } from '../src/state/edits/girder-edits'
import { copyLine } from '../src/state/edits/line-edits'
import { sample } from '../tests/support/sample'
import { watchFrames } from './frame-watch'
import { boxes, stl, terrain } from './ground'
import { checksum, ONCE, size, type Timed } from './harness'
import { inWindow, quantiles } from './window'

const MOVES = size(30, 6)
/** A hand's mouse tells of itself this often, ms. */
const PACE = 16

interface Hook {
  frames(): number
  drawn(): { calls: number; triangles: number }
}

/** The large site with a ground of about a million triangles under it, in place of one box, and the file of that. */
function withModel(): [Plan, Record<string, Uint8Array>] {
  const plan = largeSite()
  const [x, y, z] = plan.girders[0]?.start ?? [0, 0, 0]
  plan.obstacles.pop()
  plan.obstacles.push({ id: 'M', name: 'ground', kind: 'mesh', file: 'ground.stl', at: [x, y, z - 18] })
  return [plan, { 'ground.stl': stl(terrain(size(707, 71))) }]
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
  /** From letting go to the fine picture, ms. */
  fine: number
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
  const letGo = performance.now()
  await page.mouse.up()
  await page.waitForFunction(() => document.querySelector('canvas')?.dataset.fine === 'true')
  // Two frames on, what was asked for is on the page.
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))))
  const fine = performance.now() - letGo
  const between = frames.slice(1).map((t, i) => t - frames[i]!)
  return { between, shown, ...drawn, fine, resting: await atRest(page) }
}

async function atRest(page: Page): Promise<number> {
  const frames = (): Promise<number> => page.evaluate(() => (window.fallroom as unknown as Hook).frames())
  const before = await frames()
  await page.waitForTimeout(2000)
  return (await frames()) - before
}

async function rows(words: string, plan: Plan, files: Record<string, Uint8Array>): Promise<Timed[]> {
  const turned = await inWindow(plan, turn, files)
  if (!turned) return []
  const { between, shown, calls, triangles, fine, resting } = turned
  const drawn = `${calls} calls and ${triangles.toLocaleString('en')} triangles a frame`
  const frames = quantiles(`${words}, camera turned: frame to frame`, between)
  return [
    { ...frames, note: `${frames.note}; ${drawn}` },
    quantiles(`${words}, camera turned: hand to frame`, shown),
    quantiles(`${words}: from letting go to the fine picture`, [fine]),
    {
      name: `${words}: frames drawn in two seconds of rest`,
      ...{ median: resting, low: resting, high: resting },
      checksum: checksum([resting]),
      note: 'a count, not ms',
    },
  ]
}

export async function bench(): Promise<Timed[]> {
  const words = '20 girders, 12 lines, 60 obstacles'
  // The run that only shows that it still runs opens one window, with all there is in it.
  if (ONCE) return rows('a smaller site with a model', ...withModel())
  const plain = await rows(words, largeSite(), {})
  return [...plain, ...(await rows(`${words}, a million triangles`, ...withModel()))]
}
