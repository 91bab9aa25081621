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

/** Runs `work` `warm + runs` times; it returns the numbers that go into the checksum. */
export function timed(name: string, work: () => Iterable<number>, runs = 9, warm = 3, note?: string): Timed {
  let sum = ''
  const took: number[] = []
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

/** One line of the table. */
export function row(t: Timed): string {
  const ms = (v: number): string =>
    (v >= 100 ? v.toFixed(0) : v >= 1 ? v.toFixed(2) : v.toFixed(4)).padStart(9)
  return `${t.name.padEnd(58)}${ms(t.median)} ms  ${ms(t.low)} to ${ms(t.high)}  ${t.checksum}${t.note ? `  ${t.note}` : ''}`
}
