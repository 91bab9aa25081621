/**
 * Watches, inside the window, when frames are drawn and how long after the hand's first move that each shows. Runs in the
 * page, so it uses nothing from outside its own text.
 */
export interface Frames {
  /** From the first move that a frame shows to the frame, ms. */
  shown: number[]
  /** When each frame was drawn, ms of the page's clock. */
  frames: number[]
}

declare global {
  interface Window {
    frameWatch?: Frames
  }
}

export function watchFrames(): void {
  const watch: Frames = { shown: [], frames: [] }
  let moved: number | null = null
  window.addEventListener(
    'pointermove',
    (e) => {
      moved ??= e.timeStamp
    },
    { capture: true },
  )
  new MutationObserver(() => {
    const now = performance.now()
    watch.frames.push(now)
    if (moved !== null) watch.shown.push(now - moved)
    moved = null
  }).observe(document.documentElement, { attributeFilter: ['data-scene-frame'] })
  window.frameWatch = watch
}
