import type { Desk } from './bridge'
import { createBrowserDesk } from './browser/browser-desk'

declare global {
  interface Window {
    /** Put there by Electron's preload. */
    fallroomDesk?: Desk
  }
}

let desk: Desk | undefined

/** The desktop under this window: Electron's preload, the loopback host, or a bare browser. One for the window's life. */
export function getDesk(): Desk {
  desk ??= window.fallroomDesk ?? createBrowserDesk()
  return desk
}
