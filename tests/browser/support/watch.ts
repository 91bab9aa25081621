import type { Page } from '@playwright/test'

export interface Watched {
  /** Addresses outside this machine that the page asked for; each was blocked. */
  foreign: string[]
  /** Uncaught errors, and what the content policy refused. */
  faults: string[]
}

/** Blocks and counts every request to another machine, and collects the page's faults. */
export function watchPage(page: Page): Watched {
  const watched: Watched = { foreign: [], faults: [] }
  page.on('request', (request) => {
    if (!isLocal(request.url())) watched.foreign.push(request.url())
  })
  void page.route(
    (url) => !isLocal(url.href),
    (route) => route.abort(),
  )
  page.on('pageerror', (error) => watched.faults.push(String(error)))
  page.on('console', (message) => {
    const text = message.text()
    if (message.type() === 'error' && text.includes('Content Security Policy')) watched.faults.push(text)
  })
  return watched
}

function isLocal(address: string): boolean {
  return /^(data|blob|about):/.test(address) || new URL(address).hostname === '127.0.0.1'
}
