import { join } from 'node:path'
import { BrowserWindow, type Session, screen } from 'electron'
import { isAllowed, isOwnAddress, PAGE, windowOptions } from './policy'
import { keepPlace, readPlace, usablePlace } from './window-place'

/** Opens the one window where it stood last time, with its locks on. */
export function openWindow(home: string, folder: string): BrowserWindow {
  const screens = screen.getAllDisplays().map((display) => display.workArea)
  const { maximized, ...bounds } = usablePlace(readPlace(home), screens)
  const window = new BrowserWindow({ ...windowOptions(join(folder, 'preload.cjs')), ...bounds })
  if (maximized) window.maximize()
  window.once('ready-to-show', () => window.show())
  lock(window)
  window.on('close', () => {
    void keepPlace(home, { ...window.getNormalBounds(), maximized: window.isMaximized() })
  })
  void window.loadURL(PAGE)
  return window
}

/** The page stays where it is, opens nothing and is given nothing. */
function lock(window: BrowserWindow): void {
  const { webContents } = window
  const stay = (event: { preventDefault(): void }, address: string) => {
    if (!isOwnAddress(address)) event.preventDefault()
  }
  webContents.on('will-navigate', (event) => stay(event, event.url))
  webContents.on('will-frame-navigate', (event) => stay(event, event.url))
  webContents.on('will-redirect', (event) => stay(event, event.url))
  webContents.on('will-attach-webview', (event) => event.preventDefault())
  webContents.setWindowOpenHandler(() => ({ action: 'deny' }))
  lockSession(webContents.session)
}

function lockSession(session: Session): void {
  session.setPermissionRequestHandler((_, permission, answer, { requestingUrl }) =>
    answer(isAllowed(permission, requestingUrl)),
  )
  session.setPermissionCheckHandler((_, permission, origin) => isAllowed(permission, origin))
  session.setDevicePermissionHandler(() => false)
  // Nothing leaves the machine: every address that is not ours or made by the page itself is cancelled.
  session.webRequest.onBeforeRequest((details, answer) => {
    answer({ cancel: !isOwnAddress(details.url) && !/^(data|blob|devtools):/.test(details.url) })
  })
}
