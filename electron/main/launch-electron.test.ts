import { spawn } from 'node:child_process'
import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { hasDisplay, isRoot } from '../../scripts/lib/browsers.mjs'
import { buildIfStale, root } from '../../scripts/lib/build.mjs'
import { findElectron } from '../../scripts/lib/electron.mjs'

const executable = findElectron(root)
const can = executable !== null && hasDisplay()
if (!can) {
  const lacks = executable === null ? "Electron's executable is not installed" : 'there is no display'
  console.log(`The launch of Electron was not tested here: ${lacks}.`)
}

let home: string
beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'fallroom-electron-'))
})
afterAll(() => rm(home, { recursive: true, force: true }))

it.skipIf(!can)(
  'Electron opens the window, which asks for its launch plan',
  async () => {
    await buildIfStale()
    const plan = join(home, 'plan.json')
    await writeFile(plan, '{"format":"fallroom-plan","version":1}')
    const flags = isRoot() ? ['--no-sandbox'] : []
    const env = { ...process.env, FALLROOM_HOME: join(home, 'data') }
    const child = spawn(executable ?? '', [...flags, root, plan], { env, stdio: 'ignore' })
    try {
      // A plan that the window asked for is in the recent list.
      await expect.poll(() => readdir(join(home, 'data')), { timeout: 40_000 }).toContain('recent.json')
    } finally {
      child.kill()
    }
  },
  60_000,
)
