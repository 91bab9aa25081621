/** Things that came and are not shown yet: all of them together when they are released, or after a while. */
export interface Held<T> {
  hold(thing: T): void
  /** Shows what waits, now, in the order in which it came. */
  release(): void
  /** Forgets what waits. */
  drop(): void
}

/** `show` is called for each thing at the latest `after` ms from when the first of them came. */
export function createHeld<T>(show: (thing: T) => void, after: number): Held<T> {
  let waiting: T[] = []
  let timer: ReturnType<typeof setTimeout> | undefined
  const take = (): T[] => {
    clearTimeout(timer)
    timer = undefined
    const taken = waiting
    waiting = []
    return taken
  }
  const release = (): void => {
    for (const thing of take()) show(thing)
  }
  return {
    hold: (thing) => {
      waiting.push(thing)
      timer ??= setTimeout(release, after)
    },
    release,
    drop: () => void take(),
  }
}
