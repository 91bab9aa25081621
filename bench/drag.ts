/**
 * What the hand feels: from the pointer to the picture and to the findings while a stanchion is dragged in the scene, on
 * this machine, without a graphics card. One line, and twelve lines on twelve girders; with a hand that is in another
 * place at every frame, and with one that goes from loop to loop at ease.
 */
import type { Page } from '@playwright/test'
import type { Plan, Vec3 } from '../src/plan/types'
import { copyGirder } from '../src/state/edits/girder-edits'
import { copyLine } from '../src/state/edits/line-edits'
import { sample } from '../tests/support/sample'
import { type Moved, watchDrag } from './drag-page'
import { size, type Timed } from './harness'
import { inWindow, quantiles } from './window'

/** There and back is eight moves: whole rounds leave the stanchion where it was. */
const ROUND = 8
const MOVES = size(8, 1) * ROUND
const EASY_MOVES = size(4, 1) * ROUND
/** A hand's mouse tells of itself this often, ms: here every time from another loop, faster than anybody drags. */
const FAST = 16
/** From loop to loop at a pace at which a person reads the figures, ms. */
const EASY = 250

interface Hook {
  project(at: Vec3): { x: number; y: number } | null
  store: { getState(): { plan: Plan; study: { ofPlan: unknown } } }
}

function twelveLines(): Plan {
  const plan = sample('thin-margins')
  const [line, girder] = [plan.lines[0], plan.girders[0]]
  if (!line || !girder) throw new Error('the sample has no line')
  for (const id of copyGirder(plan, girder.id, 11, 3)) copyLine(plan, line.id, id)
  return plan
}

/** Drags an inner stanchion there and back, fast and easily; every move that changed the plan. */
const measureDrag = async (plan: Plan): Promise<Record<string, Moved[]>> =>
  (await inWindow(plan, async (page) => {
    // What runs this file gives functions their names by a helper that the page does not have.
    await page.evaluate('globalThis.__name = (named) => named')
    await page.evaluate(watchDrag)
    const fast = await dragThere(page, plan, MOVES, FAST)
    return { fast, easy: await dragThere(page, plan, EASY_MOVES, EASY) }
  })) ?? {}

async function dragThere(page: Page, plan: Plan, count: number, pace: number): Promise<Moved[]> {
  const [girder, post] = [plan.girders[0], plan.lines[0]?.stanchions[1]]
  if (!girder || !post) throw new Error('nothing to drag')
  // Every move goes on by one gap between loops, four there and four back, so that each changes the plan.
  const step = girder.loops[0]?.spacing ?? 0.3
  const at = async (gaps: number): Promise<{ x: number; y: number }> => {
    const point: Vec3 = [girder.start[0] + post.station + gaps * step, girder.start[1], girder.start[2] + 0.5]
    const pixel = await page.evaluate((p) => (window.fallroom as unknown as Hook).project(p), point)
    if (!pixel) throw new Error('the stanchion is not in view')
    return pixel
  }
  const stops = await Promise.all([0, -1, -2, -3, -4, -3, -2, -1].map(at))
  const first = stops[0] ?? { x: 0, y: 0 }
  await page.mouse.move(first.x, first.y)
  await page.mouse.down()
  for (let i = 1; i <= count; i++) {
    const to = stops[i % stops.length] ?? first
    const began = performance.now()
    await page.mouse.move(to.x, to.y)
    await page.waitForTimeout(Math.max(0, pace - (performance.now() - began)))
  }
  // The numbers must be final in the gesture: the hand still holds on.
  const plain = () => {
    const { plan: now, study } = (window.fallroom as unknown as Hook).store.getState()
    return study.ofPlan === now
  }
  await page.waitForFunction(plain, undefined, { timeout: 60_000 })
  await page.mouse.up()
  return page.evaluate(() => window.dragWatch?.moves.splice(0) ?? [])
}

export async function bench(): Promise<Timed[]> {
  const rows: Timed[] = []
  const plans = { 'one line': sample('thin-margins'), ...size({ '12 lines': twelveLines() }, {}) }
  for (const [words, plan] of Object.entries(plans)) {
    for (const [hand, moves] of Object.entries(await measureDrag(plan))) {
      if (moves.length === 0) throw new Error(`the ${hand} hand moved nothing`)
      const since = (when: 'drawn' | 'found'): number[] =>
        moves.flatMap((m) => (m[when] === null ? [] : [m[when] - m.pointer]))
      rows.push(quantiles(`${words}, ${hand}: pointer to scene drawn`, since('drawn')))
      rows.push(quantiles(`${words}, ${hand}: pointer to findings on the page`, since('found')))
    }
  }
  return rows
}
