/** Opens the built window on a plan in an installed browser, for benches of what the hand feels without a graphics card. */
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Page } from '@playwright/test'
import { startLoopback } from '../electron/loopback'
import { findBrowser, isRoot, quietFlags } from '../scripts/lib/browsers.mjs'
import { buildIfStale, builtWindow } from '../scripts/lib/build.mjs'
import type { Plan } from '../src/plan/types'
import { writePlan } from '../src/plan/write'
import type { Timed } from './harness'

interface Hook {
  store: { getState(): { plan: object; study: { ofPlan: object | null; whole: boolean } } }
}

/**
 * What `work` gives of a window on the plan; null where there is no browser. `files` lie beside the plan. The build itself
 * is not measured.
 */
export async function inWindow<T>(
  plan: Plan,
  work: (page: Page) => Promise<T>,
  files: Record<string, Uint8Array> = {},
): Promise<T | null> {
  const executablePath = findBrowser()
  if (!executablePath) return null
  await buildIfStale()
  const folder = await mkdtemp(join(tmpdir(), 'fallroom-bench-'))
  const path = join(folder, 'plan.json')
  await writeFile(path, writePlan(plan))
  for (const [name, bytes] of Object.entries(files)) await writeFile(join(folder, name), bytes)
  const host = await startLoopback({ built: builtWindow, plan: path, home: join(folder, 'home') })
  const args = ['--enable-unsafe-swiftshader', ...quietFlags]
  const browser = await chromium.launch({ executablePath, args: isRoot() ? [...args, '--no-sandbox'] : args })
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } })
    await page.goto(host.address)
    await quiet(page)
    return await work(page)
  } finally {
    await browser.close()
    await host.stop()
    await rm(folder, { recursive: true, force: true })
  }
}

/** Until the scene stands, the whole study of the plan is done and no worker has anything left to do. */
async function quiet(page: Page): Promise<void> {
  const drawn = () => document.documentElement.dataset.scene === 'ready'
  await page.waitForFunction(drawn, undefined, { timeout: 60_000 })
  const studied = () => {
    const { plan, study } = (window.fallroom as unknown as Hook).store.getState()
    return study.whole && study.ofPlan === plan
  }
  await page.waitForFunction(studied, undefined, { timeout: 120_000 })
  // A worker answers when it has nothing else to do: rooms' surfaces come after the figures.
  await Promise.all(page.workers().map((worker) => worker.evaluate(() => 0)))
}

/** The share `q` of the values lies at or below it. */
const quantile = (values: number[], q: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * q))] ?? Number.NaN

/** For the table: half of the times, the least, and what nineteen in twenty stay below. */
export const quantiles = (name: string, times: number[]): Timed => ({
  name,
  median: quantile(times, 0.5),
  low: quantile(times, 0),
  high: quantile(times, 0.95),
  checksum: '-',
  note: `p50, least to p95 of ${times.length}`,
})
