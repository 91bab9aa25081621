/**
 * What goes from the worker to the window again and again: things that have not changed since are named, not sent. So a
 * study of twelve lines costs the way of one, and the window keeps the very object that it has drawn.
 */
export type Sent<T> = { key: string; value: T } | { key: string }

/** The worker's side: what has gone over before is told by its identity. Of equal keys the last one counts, on both sides. */
export function sender<T extends object>(keyOf: (thing: T) => string): (things: readonly T[]) => Sent<T>[] {
  let before = new Map<string, T>()
  return (things) => {
    const sent = things.map((value) => {
      const key = keyOf(value)
      return before.get(key) === value ? { key } : { key, value }
    })
    before = new Map(things.map((value) => [keyOf(value), value]))
    return sent
  }
}

/** The window's side of it; throws where something is named that never came. */
export function receiver<T extends object>(): (sent: readonly Sent<T>[]) => T[] {
  let before = new Map<string, T>()
  return (sent) => {
    const now = sent.map((s) => ('value' in s ? s.value : known(before, s.key)))
    before = new Map(sent.map((s, i) => [s.key, now[i]!]))
    return now
  }
}

function known<T>(before: ReadonlyMap<string, T>, key: string): T {
  const value = before.get(key)
  if (value === undefined) throw new Error(`the study names ${key} as known, which it is not`)
  return value
}
