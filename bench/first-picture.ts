/** How long a person waits from `npm start` to the first picture, beside a bare page built by the same tool. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium } from '@playwright/test'
import { build } from 'vite'
import { startLoopback } from '../electron/loopback'
import { findBrowser, isRoot, quietFlags } from '../scripts/lib/browsers.mjs'
import { buildIfStale, builtWindow } from '../scripts/lib/build.mjs'
import { size, type Timed } from './harness'

export interface FirstPicture {
  /** Host, browser and page together, median, ms. */
  windowMs: number
  bareMs: number
  ratio: number
}

const announced = () => document.documentElement.dataset.scene === 'ready'

/** Measures `runs` starts of each, in turn. Null where there is no browser. The build itself is not measured. */
export async function benchFirstPicture(runs = size(3, 1)): Promise<FirstPicture | null> {
  const executablePath = findBrowser()
  if (!executablePath) return null
  await buildIfStale()
  const folder = await mkdtemp(join(tmpdir(), 'fallroom-bench-'))
  try {
    const bare = await buildBare(folder)
    const times = { window: [] as number[], bare: [] as number[] }
    for (let run = 0; run < runs; run += 1) {
      times.window.push(await timeStart(builtWindow, executablePath, join(folder, 'home')))
      times.bare.push(await timeStart(bare, executablePath, join(folder, 'home')))
    }
    const [windowMs, bareMs] = [median(times.window), median(times.bare)]
    return { windowMs, bareMs, ratio: windowMs / bareMs }
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

/** From nothing to the page's own announcement that it has drawn. */
async function timeStart(built: string, executablePath: string, home: string): Promise<number> {
  const started = performance.now()
  const host = await startLoopback({ built, home })
  const args = ['--enable-unsafe-swiftshader', ...quietFlags]
  const browser = await chromium.launch({ executablePath, args: isRoot() ? [...args, '--no-sandbox'] : args })
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } })
    await page.goto(host.address)
    await page.waitForFunction(announced, undefined, { timeout: 60_000 })
    return performance.now() - started
  } finally {
    await browser.close()
    await host.stop()
  }
}

/** A page with one script that writes one line and announces it once it is drawn. */
async function buildBare(folder: string): Promise<string> {
  const root = join(folder, 'bare')
  await mkdir(root)
  const html =
    '<!doctype html><html><head></head><body><script type="module" src="./main.js"></script></body></html>'
  await writeFile(join(root, 'index.html'), html)
  const draw = "document.body.textContent = 'drawn'"
  const announce = "requestAnimationFrame(() => { document.documentElement.dataset.scene = 'ready' })"
  await writeFile(join(root, 'main.js'), `${draw}\n${announce}\n`)
  const outDir = join(folder, 'bare-built')
  await build({ root, configFile: false, logLevel: 'silent', build: { outDir } })
  return outDir
}

function median(values: number[]): number {
  return values.sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN
}

/** For the table: both starts, and their ratio. */
export async function bench(): Promise<Timed[]> {
  const got = await benchFirstPicture()
  if (!got) return []
  const of = (name: string, ms: number, note?: string): Timed => ({
    name,
    median: ms,
    low: ms,
    high: ms,
    checksum: '-',
    ...(note ? { note } : {}),
  })
  return [
    of('a bare page by the same tool, host and browser included', got.bareMs),
    of(
      'the window on a sample to its first picture',
      got.windowMs,
      `${got.ratio.toFixed(1)} times the bare page`,
    ),
  ]
}
