import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { createRequire } from 'node:module'
import { findBrowser, isRoot } from './browsers.mjs'

/**
 * Finds a browser for the tests, or gets one: as root on Debian its chromium package, elsewhere Playwright's own
 * download. Only the tests do this; the program itself never downloads anything.
 * @returns {{ found: string } | { lacks: string }}
 */
export function getTestBrowser() {
  const there = findBrowser() ?? playwrightsOwn()
  if (there) return { found: there }
  console.log('No Chromium-family browser is installed here; getting one for the tests.')
  if (isRoot() && existsSync('/etc/debian_version')) installOnDebian()
  else run(process.execPath, [playwrightCli(), 'install', 'chromium'])
  const got = findBrowser() ?? playwrightsOwn()
  return got
    ? { found: got }
    : {
        lacks:
          'a Chromium-family browser: install one, or name one in FALLROOM_BROWSER, and run npm test again',
      }
}

export function playwrightCli() {
  return createRequire(import.meta.url).resolve('@playwright/test/cli')
}

function playwrightsOwn() {
  const { chromium } = createRequire(import.meta.url)('@playwright/test')
  const path = chromium.executablePath()
  return path && existsSync(path) ? path : null
}

function installOnDebian() {
  run('apt-get', ['update', '-qq'])
  run('apt-get', ['install', '-y', '-qq', 'chromium'])
}

function run(command, args) {
  spawnSync(command, args, { stdio: 'inherit', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } })
}
