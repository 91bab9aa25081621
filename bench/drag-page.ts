/**
 * Watches, inside the window, what a move of the pointer brings about: the frame that shows it, and the findings that are
 * of it. Runs in the page, so it uses nothing from outside its own text.
 */

/** One move that changed the plan; times in ms of the page's clock, null where it was overtaken by a newer move. */
export interface Moved {
  pointer: number
  /** End of the task that drew the scene with it. */
  drawn: number | null
  /** The findings of exactly this plan stand in the store and, one frame later, on the page. */
  found: number | null
}

interface Hook {
  store: {
    getState(): State
    subscribe(heard: (now: State, before: State) => void): () => void
  }
  frames(): number
}
interface State {
  plan: object
  gesture: string | null
  study: { ofPlan: object | null }
}

declare global {
  interface Window {
    dragWatch?: { moves: Moved[]; stop(): void }
  }
}

export function watchDrag(): void {
  const hook = window.fallroom as unknown as Hook
  const moves: Moved[] = []
  const byPlan = new WeakMap<object, Moved>()
  let pointer = 0
  const onMove = (e: PointerEvent): void => {
    pointer = e.timeStamp
  }
  window.addEventListener('pointermove', onMove, { capture: true })
  let waiting: Moved[] = []
  const off = hook.store.subscribe((now, before) => {
    if (now.plan !== before.plan && now.gesture !== null) {
      const moved: Moved = { pointer, drawn: null, found: null }
      moves.push(moved)
      byPlan.set(now.plan, moved)
      waiting.push(moved)
    }
    if (now.study.ofPlan !== before.study.ofPlan && now.study.ofPlan) {
      const moved = byPlan.get(now.study.ofPlan)
      if (moved && moved.found === null) requestAnimationFrame(() => (moved.found = performance.now()))
    }
  })
  const frames = new MutationObserver(() => {
    for (const moved of waiting) moved.drawn = performance.now()
    waiting = []
  })
  frames.observe(document.documentElement, { attributeFilter: ['data-scene-frame'] })
  window.dragWatch = {
    moves,
    stop: () => {
      off()
      frames.disconnect()
      window.removeEventListener('pointermove', onMove, { capture: true })
    },
  }
}
