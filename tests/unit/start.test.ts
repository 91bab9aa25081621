/** `npm start` as a person calls it, with a browser that stands in for theirs: what it opens, and what stops it. */
import { spawn } from 'node:child_process'
import { chmod, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { root } from '../../scripts/lib/build.mjs'

/** Opens the address as a browser would, and writes down how it was called and what it got. */
const browser = (told: string): string => `#!${process.execPath}
const app = process.argv.find((a) => a.startsWith('--app=')).slice('--app='.length)
fetch(app, { redirect: 'manual' }).then((got) =>
  require('node:fs').writeFileSync(${JSON.stringify(told)}, JSON.stringify({
    flags: process.argv.slice(2), status: got.status, cookie: got.headers.get('set-cookie'),
  })))
setInterval(() => {}, 1000)
`

it.skipIf(process.platform === 'win32')('opens the window in an installed browser', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'fallroom-start-'))
  const [named, told] = [join(folder, 'browser.cjs'), join(folder, 'told.json')]
  await writeFile(named, browser(told))
  await chmod(named, 0o755)
  const env = {
    ...process.env,
    DISPLAY: ':0',
    FALLROOM_BROWSER: named,
    FALLROOM_HOME: folder,
    // Electron's own executable would be taken first where it is there.
    ELECTRON_OVERRIDE_DIST_PATH: folder,
  }
  const started = spawn(process.execPath, [join(root, 'scripts', 'start.mjs')], { env })
  let said = ''
  started.stdout.on('data', (text) => (said += text))
  started.stderr.on('data', (text) => (said += text))
  let over = false
  const ended = new Promise<void>((settle) =>
    started.on('exit', () => {
      over = true
      settle()
    }),
  )
  try {
    const opened = async () => JSON.parse(await readFile(told, 'utf8').catch(() => 'null'))
    await expect.poll(async () => over || (await opened()) !== null, { timeout: 120_000 }).toBe(true)
    expect(over, said).toBe(false)
    expect(await opened()).toMatchObject({ cookie: expect.any(String) })
    const { flags } = await opened()
    expect(flags).toContain(`--user-data-dir=${join(folder, 'browser')}`)
    expect(said).toContain('Close that window to stop')
  } finally {
    started.kill('SIGTERM')
    await ended
    await rm(folder, { recursive: true, force: true })
  }
  expect(said).not.toMatch(/error/i)
})
