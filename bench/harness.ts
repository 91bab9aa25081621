/** Times a piece of work: median and spread of several runs after warm-up, and a checksum, so that it cannot be skipped. */

export interface Timed {
  name: string
  /** ms a run */
  median: number
  low: number
  high: number
  /** Folds the results; the same inputs give the same sum on every machine. */
  checksum: string
  /** What the figure is to be read as. */
  note?: string
}

/** Folds numbers into a short checksum; 9 digits each, so that the last bits of a platform's libm do not show. */
export function checksum(values: Iterable<number>): string {
  let hash = 0x811c9dc5
  for (const v of values) {
    for (const c of v.toPrecision(9)) hash = Math.imul(hash ^ c.charCodeAt(0), 0x01000193) >>> 0
  }
  return hash.toString(16).padStart(8, '0')
}

/** `FALLROOM_BENCH=once`: each bench runs once and at its least size, only to show that it still runs. */
export const ONCE = process.env.FALLROOM_BENCH === 'once'

/** The size of a bench: the whole one, or the least in a run that only shows that it still runs. */
export const size = <T>(whole: T, least: T): T => (ONCE ? least : whole)

/** Runs `work` `warm + runs` times; it returns the numbers that go into the checksum. */
export function timed(name: string, work: () => Iterable<number>, runs = 9, warm = 3, note?: string): Timed {
  let sum = ''
  const took: number[] = []
  if (ONCE) [runs, warm] = [1, 0]
  for (let i = 0; i < warm + runs; i++) {
    const t = performance.now()
    const values = work()
    const ms = performance.now() - t
    sum = checksum(values)
    if (i >= warm) took.push(ms)
  }
  took.sort((a, b) => a - b)
  return {
    name,
    median: took[took.length >> 1]!,
    low: took[0]!,
    high: took[took.length - 1]!,
    checksum: sum,
    ...(note === undefined ? {} : { note }),
  }
}
