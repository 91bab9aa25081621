import { copyFile, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { test as base, expect, type Page } from '@playwright/test'
import { type Loopback, startLoopback } from '../../../electron/loopback'
import { builtWindow, root } from '../../../scripts/lib/build.mjs'
import { watchPage } from './watch'
import { planOf, ready } from './window'

export interface DeskFixture {
  /** A folder of this test's own, removed afterwards. */
  folder: string
  /** Where the journal and the recent list of this test lie. */
  home: string
  /** Opens the window on a copy of `samples/NAME` and waits for the scene. Returns the copy's path. */
  openSample(name: string): Promise<string>
  /** The same with a plan of the test's own; `wait` false does not wait for the scene. */
  openText(text: string, name?: string, wait?: boolean): Promise<string>
  /** Opens the window without a plan; `wait` false does not wait for the scene. */
  openNothing(wait?: boolean): Promise<void>
}

/**
 * `desk` gives every test a loopback host of its own on the built window. After each test it holds that the page asked
 * no other machine for anything and met neither an error nor its content policy.
 */
export const test = base.extend<{ desk: DeskFixture }>({
  desk: async ({ page }, use) => {
    const folder = await mkdtemp(join(tmpdir(), 'fallroom-test-'))
    const home = join(folder, 'home')
    const watched = watchPage(page)
    const hosts: Loopback[] = []
    const open = async (plan: string | undefined, wait = true) => {
      const host = await startLoopback({ built: builtWindow, home, ...(plan === undefined ? {} : { plan }) })
      hosts.push(host)
      await page.goto(host.address)
      if (wait) await ready(page)
    }
    await use({
      folder,
      home,
      openSample: async (name) => {
        const path = await openCopy(folder, join(root, 'samples', name), open)
        // The scene may stand before the file is read: then it shows the empty plan that the window begins with.
        await expect.poll(async () => (await planOf(page)).girders.length).toBeGreaterThan(0)
        return path
      },
      openText: (text, name, wait) => openText(folder, text, name ?? 'plan.json', (plan) => open(plan, wait)),
      openNothing: (wait) => open(undefined, wait),
    })
    await page.close()
    await Promise.all(hosts.map((host) => host.stop()))
    // A host that was told to stop may still be writing its last journal entry.
    await rm(folder, { recursive: true, force: true, maxRetries: 5 })
    expect(watched.foreign, 'requests to other machines').toEqual([])
    expect(watched.faults, 'errors of the page').toEqual([])
  },
})

async function openCopy(
  folder: string,
  from: string,
  open: (plan: string) => Promise<void>,
): Promise<string> {
  const to = join(folder, basename(from))
  await copyFile(from, to)
  await open(to)
  return to
}

async function openText(
  folder: string,
  text: string,
  name: string,
  open: (plan: string) => Promise<void>,
): Promise<string> {
  await mkdir(folder, { recursive: true })
  const path = join(folder, name)
  await writeFile(path, text)
  await open(path)
  return path
}

export type { Page }
export { expect }
