import type { Desk } from './bridge'
import { createBrowserDesk } from './browser/browser-desk'
import { createLoopbackDesk } from './loopback/loopback-desk'

declare global {
  interface Window {
    /** Put there by Electron's preload. */
    fallroomDesk?: Desk
  }
}

let desk: Desk | undefined

/** The desktop under this window: Electron's preload, the loopback host, or a bare browser. One for the window's life. */
export function getDesk(): Desk {
  desk ??= window.fallroomDesk ?? (onLoopback() ? createLoopbackDesk() : createBrowserDesk())
  return desk
}

/** The loopback host marks its page. */
function onLoopback(): boolean {
  return document.querySelector('meta[name="fallroom-desk"]')?.getAttribute('content') === 'loopback'
}
