/**
 * What the hand feels: from the pointer to the picture and to the findings while a stanchion is dragged in the scene, on
 * this machine, without a graphics card. One line, and twelve lines on twelve girders.
 */
import type { Page } from '@playwright/test'
import type { Plan, Vec3 } from '../src/plan/types'
import { copyGirder } from '../src/state/edits/girder-edits'
import { copyLine } from '../src/state/edits/line-edits'
import { sample } from '../tests/support/sample'
import { type Moved, watchDrag } from './drag-page'
import { size, type Timed } from './harness'
import { inWindow, quantiles } from './window'

const MOVES = size(60, 6)
/** A hand's mouse tells of itself this often, ms. */
const PACE = 16

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

/** Drags an inner stanchion there and back; every move that changed the plan. */
export const measureDrag = async (plan: Plan): Promise<Moved[]> =>
  (await inWindow(plan, (page) => dragThere(page, plan))) ?? []

async function dragThere(page: Page, plan: Plan): Promise<Moved[]> {
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
  // What runs this file gives functions their names by a helper that the page does not have.
  await page.evaluate('globalThis.__name = (named) => named')
  await page.evaluate(watchDrag)
  const first = stops[0] ?? { x: 0, y: 0 }
  await page.mouse.move(first.x, first.y)
  await page.mouse.down()
  for (let i = 1; i <= MOVES; i++) {
    const to = stops[i % stops.length] ?? first
    const began = performance.now()
    await page.mouse.move(to.x, to.y)
    await page.waitForTimeout(Math.max(0, PACE - (performance.now() - began)))
  }
  // The numbers must be final in the gesture: the hand still holds on.
  const plain = () => {
    const { plan: now, study } = (window.fallroom as unknown as Hook).store.getState()
    return study.ofPlan === now
  }
  await page.waitForFunction(plain, undefined, { timeout: 60_000 })
  await page.mouse.up()
  return page.evaluate(() => window.dragWatch?.moves ?? [])
}

export async function bench(): Promise<Timed[]> {
  const rows: Timed[] = []
  const plans = { 'one line': sample('thin-margins'), ...size({ '12 lines': twelveLines() }, {}) }
  for (const [words, plan] of Object.entries(plans)) {
    const moves = await measureDrag(plan)
    if (moves.length === 0) continue
    const since = (when: 'drawn' | 'found'): number[] =>
      moves.flatMap((m) => (m[when] === null ? [] : [m[when] - m.pointer]))
    rows.push(quantiles(`${words}: pointer to scene drawn`, since('drawn')))
    rows.push(quantiles(`${words}: pointer to findings on the page`, since('found')))
  }
  return rows
}
