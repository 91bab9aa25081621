import type { Memory } from '../bridge'
import { ask } from './ask'

/** What the host remembers for the window; the page brings it along, since a browser's own storage starts empty here. */
export function createLoopbackMemory(): Memory {
  const kept = new Map<string, string>(Object.entries(brought()))
  return {
    get: (key) => kept.get(key) ?? null,
    set: (key, value) => {
      kept.set(key, value)
      void ask<null>('remember', { key, value })
    },
  }
}

function brought(): Record<string, string> {
  const content = document.querySelector('meta[name="fallroom-memory"]')?.getAttribute('content')
  try {
    return JSON.parse(decodeURIComponent(content ?? '{}'))
  } catch {
    return {}
  }
}
