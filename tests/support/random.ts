/** Seeded random numbers for tests (mulberry32, public domain algorithm by T. Ettinger): the seed is printed by whoever uses it. */
export function seeded(seed: number): {
  next: () => number
  between: (low: number, high: number) => number
  whole: (low: number, high: number) => number
} {
  let state = seed >>> 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  const between = (low: number, high: number): number => low + (high - low) * next()
  return { next, between, whole: (low, high) => Math.floor(between(low, high + 1)) }
}
