import type { BrowserWindowConstructorOptions } from 'electron'

/** The one address that the window is served from. */
export const SCHEME = 'app'
const ORIGIN = `${SCHEME}://fallroom`
export const PAGE = `${ORIGIN}/index.html`

/** True for an address of our own build; everything else is refused navigation, frames and answers. */
export function isOwnAddress(address: string): boolean {
  try {
    const url = new URL(address)
    return url.protocol === `${SCHEME}:` && url.host === 'fallroom' && url.username === '' && url.port === ''
  } catch {
    return false
  }
}

/** Who may ask the main process a verb: the top frame of our own page. */
export function isOwnSender(frame: { url: string; parent: unknown } | null): boolean {
  return frame !== null && frame.parent === null && isOwnAddress(frame.url)
}

/** The page needs none of the browser's permissions, except to put text on the clipboard from a click. */
export function isAllowed(permission: string, address: string): boolean {
  return permission === 'clipboard-sanitized-write' && isOwnAddress(address)
}

/** The locks of the page: a sandbox, a world of its own for the preload, no Node, no further content. */
export function windowOptions(preload: string): BrowserWindowConstructorOptions {
  return {
    show: false,
    minWidth: 900,
    minHeight: 600,
    backgroundColor: '#f6f4ef',
    title: 'Fallroom',
    webPreferences: {
      preload,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      devTools: process.env.FALLROOM_DEVTOOLS === '1',
    },
  }
}
