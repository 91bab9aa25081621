/** Where a fall's picture stands now. A plain subscription, so that playing goes past React. */
export interface Playhead {
  /** Frame of the history; between two frames the picture is mixed. */
  get: () => number
  set: (frame: number) => void
  subscribe: (listener: () => void) => () => void
}

export function createPlayhead(start = 0): Playhead {
  let frame = start
  const listeners = new Set<() => void>()
  return {
    get: () => frame,
    set: (next) => {
      if (next === frame || !Number.isFinite(next)) return
      frame = next
      for (const listener of listeners) listener()
    },
    subscribe: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
  }
}
