import { existsSync } from 'node:fs'
import { homedir } from 'node:os'
import { posix, win32 } from 'node:path'

const onPath = [
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
  'microsoft-edge-stable',
  'microsoft-edge',
  'brave-browser',
  'vivaldi-stable',
]
const macApps = ['Chromium', 'Google Chrome', 'Microsoft Edge', 'Brave Browser', 'Vivaldi']
const windowsApps = [
  'Google\\Chrome\\Application\\chrome.exe',
  'Chromium\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
  'BraveSoftware\\Brave-Browser\\Application\\brave.exe',
  'Vivaldi\\Application\\vivaldi.exe',
]

/**
 * The executable of an installed Chromium-family browser, or null. FALLROOM_BROWSER names one outright. Asks nobody and
 * downloads nothing.
 * @param {{ platform?: string, env?: Record<string, string | undefined>, home?: string, exists?: (path: string) => boolean }} [at]
 * @returns {string | null}
 */
export function findBrowser({
  platform = process.platform,
  env = process.env,
  home = homedir(),
  exists = existsSync,
} = {}) {
  if (env.FALLROOM_BROWSER) return exists(env.FALLROOM_BROWSER) ? env.FALLROOM_BROWSER : null
  return places(platform, env, home).find(exists) ?? null
}

function places(platform, env, home) {
  if (platform === 'win32') return windowsPlaces(env)
  if (platform === 'darwin') {
    const roots = ['/Applications', posix.join(home, 'Applications')]
    return macApps.flatMap((name) => roots.map((root) => `${root}/${name}.app/Contents/MacOS/${name}`))
  }
  const folders = [...(env.PATH ?? '').split(':').filter(Boolean), '/usr/bin', '/usr/local/bin', '/snap/bin']
  const flatpaks = ['/var/lib/flatpak/exports/bin', posix.join(home, '.local/share/flatpak/exports/bin')]
  return [
    ...onPath.flatMap((name) => folders.map((folder) => posix.join(folder, name))),
    ...flatpaks.map((folder) => posix.join(folder, 'org.chromium.Chromium')),
  ]
}

function windowsPlaces(env) {
  const roots = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA].filter(Boolean)
  return windowsApps.flatMap((app) => roots.map((root) => win32.join(root, app)))
}

/** True if a window can be shown at all: on Linux that takes a display. */
export function hasDisplay(platform = process.platform, env = process.env) {
  return platform !== 'linux' || Boolean(env.DISPLAY || env.WAYLAND_DISPLAY)
}

/** True if the program runs as root, where Chromium refuses its own sandbox. */
export function isRoot() {
  return process.getuid?.() === 0
}

/**
 * How the browser is started: one window without tabs, a profile of its own, and no way to any other machine.
 * @param {string} address
 * @param {string} profile folder of the profile
 */
export function appWindowFlags(address, profile) {
  return [
    `--app=${address}`,
    `--user-data-dir=${profile}`,
    '--window-size=1440,900',
    '--no-first-run',
    '--no-default-browser-check',
    '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
    ...quietFlags,
    // Lets machines without a graphics card draw the scene too; the page shown is our own.
    '--enable-unsafe-swiftshader',
    ...(isRoot() ? ['--no-sandbox', '--test-type'] : []),
  ]
}

/** Keep a browser from calling home. */
export const quietFlags = [
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-domain-reliability',
  '--disable-sync',
  '--disable-quic',
  '--no-pings',
]
