import { describe, expect, it } from 'vitest'
import { appWindowFlags, findBrowser, hasDisplay } from '../../scripts/lib/browsers.mjs'
import { findElectron } from '../../scripts/lib/electron.mjs'
import { browserCount, closingLine, settle, unitCount } from '../../scripts/lib/test-parts.mjs'

const only = (path: string) => (asked: string) => asked === path

describe('finding a browser', () => {
  const windows = { PROGRAMFILES: 'C:\\Program Files', LOCALAPPDATA: 'C:\\Users\\a\\AppData\\Local' }
  it.each([
    ['linux', { PATH: '/opt/x:/usr/bin' }, '/usr/bin/chromium'],
    ['linux', { PATH: '/opt/x' }, '/opt/x/microsoft-edge'],
    ['linux', {}, '/snap/bin/chromium'],
    ['linux', {}, '/home/a/.local/share/flatpak/exports/bin/org.chromium.Chromium'],
    ['darwin', {}, '/home/a/Applications/Chromium.app/Contents/MacOS/Chromium'],
    ['win32', windows, 'C:\\Program Files\\Microsoft\\Edge\\Application\\msedge.exe'],
    ['win32', windows, 'C:\\Users\\a\\AppData\\Local\\Google\\Chrome\\Application\\chrome.exe'],
  ])('on %s with %j', (platform, env, path) => {
    expect(findBrowser({ platform, env, home: '/home/a', exists: only(path) })).toBe(path)
  })

  it('takes the one that was named, or none', () => {
    const env = { FALLROOM_BROWSER: '/my/browser', PATH: '/usr/bin' }
    expect(findBrowser({ platform: 'linux', env, exists: () => true })).toBe('/my/browser')
    expect(findBrowser({ platform: 'linux', env, exists: only('/usr/bin/chromium') })).toBeNull()
    expect(findBrowser({ platform: 'linux', env: {}, exists: () => false })).toBeNull()
  })

  it('opens no window without a display', () => {
    expect(hasDisplay('linux', {})).toBe(false)
    expect(hasDisplay('linux', { WAYLAND_DISPLAY: 'wayland-0' })).toBe(true)
    expect(hasDisplay('win32', {})).toBe(true)
  })

  it('lets the window reach this machine only', () => {
    const flags = appWindowFlags('http://127.0.0.1:1/?token=x', '/profile')
    expect(flags).toContain('--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1')
    expect(flags).toContain('--disable-background-networking')
  })
})

it('does not take Electron for present where only its package is', () => {
  expect(findElectron('/nowhere', {})).toBeNull()
  expect(findElectron('/nowhere', { ELECTRON_OVERRIDE_DIST_PATH: '/nowhere/dist' })).toBeNull()
})

describe('the sum of the tests', () => {
  it('counts tests, and files that could not be loaded', () => {
    const file = (status: string, tests: number) => ({ status, assertionResults: Array(tests).fill({}) })
    const report = { numPassedTests: 7, numFailedTests: 1, numPendingTests: 2 }
    const testResults = [file('failed', 3), file('failed', 0), file('passed', 7)]
    expect(unitCount({ ...report, testResults })).toEqual({ passed: 7, failed: 2, skipped: 2 })
    const stats = { expected: 4, flaky: 1, unexpected: 2, skipped: 3 }
    expect(browserCount({ stats, errors: [{}] })).toEqual({ passed: 5, failed: 3, skipped: 3 })
  })

  it('never counts a part that broke, or ran nothing, as passed', () => {
    expect(settle(1, null)).toMatchObject({ failed: 1 })
    expect(settle(1, { passed: 9, failed: 0, skipped: 0 })).toMatchObject({ failed: 1 })
    expect(settle(0, { passed: 0, failed: 0, skipped: 5 })).toMatchObject({ failed: 1 })
    expect(settle(0, { passed: 9, failed: 0, skipped: 1 })).toEqual({ passed: 9, failed: 0, skipped: 1 })
  })

  it('closes on one plain line', () => {
    const count = { passed: 2, failed: 0, skipped: 0 }
    expect(closingLine([count, count])).toBe('4 passed, 0 failed')
    expect(closingLine([count, { ...count, failed: 1, skipped: 3 }])).toBe('4 passed, 1 failed, 3 skipped')
  })
})
