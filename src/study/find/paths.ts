/** Layouts as paths over loop gaps: which spans may follow each other, how few make it, and all of them in order. */

export interface Graph {
  from: number
  to: number
  /** Whether a stanchion may stand in a gap. */
  fit: readonly boolean[]
  /** Cost of a span of so many gaps at its best; null: no layout may have one. */
  cost: readonly (number | null)[]
  /** Spans that are ruled out at their place, `from * size + to`. */
  excluded: Set<number>
}

const edgeKey = (g: Graph, a: number, b: number): number => a * g.fit.length + b

const open = (g: Graph, a: number, b: number): boolean =>
  (b === g.to || g.fit[b] === true) && g.cost[b - a] != null && !g.excluded.has(edgeKey(g, a, b))

/** Least number of spans from the first to the last gap; null: no path. */
export function fewestSpans(g: Graph): number | null {
  const least = new Map<number, number>([[g.from, 0]])
  for (let b = g.from + 1; b <= g.to; b++) {
    if (b !== g.to && !g.fit[b]) continue
    for (let a = g.from; a < b; a++) {
      const at = least.get(a)
      if (at === undefined || !open(g, a, b)) continue
      least.set(b, Math.min(least.get(b) ?? Number.POSITIVE_INFINITY, at + 1))
    }
  }
  return least.get(g.to) ?? null
}

/** `table[j][b]`: the least possible greatest cost of j spans from gap b to the end; infinite where there are none. */
function minimax(g: Graph, spans: number): Float64Array[] {
  const size = g.fit.length
  const table = [new Float64Array(size).fill(Number.POSITIVE_INFINITY)]
  table[0]![g.to] = Number.NEGATIVE_INFINITY
  for (let j = 1; j <= spans; j++) {
    const before = table[j - 1]!
    const now = new Float64Array(size).fill(Number.POSITIVE_INFINITY)
    for (let a = g.from; a < g.to; a++) {
      if (a !== g.from && !g.fit[a]) continue
      for (let b = a + 1; b <= g.to; b++) {
        if (before[b] === Number.POSITIVE_INFINITY || !open(g, a, b)) continue
        now[a] = Math.min(now[a]!, Math.max(g.cost[b - a]!, before[b]!))
      }
    }
    table.push(now)
  }
  return table
}

/** The least possible greatest cost over layouts with exactly so many spans; null: there is none. */
export function leastCost(g: Graph, spans: number): number | null {
  const found = minimax(g, spans)[spans]![g.from]!
  return found < Number.POSITIVE_INFINITY ? found : null
}

/**
 * Every layout with exactly so many spans whose greatest cost is below `limit()`, those with the least first at each
 * step; `rules` says of a span whether it is ruled out at its place and is asked once. Stops of itself at the end: then
 * there are no others.
 */
export function* layouts(
  g: Graph,
  spans: number,
  rulesOut: (a: number, b: number) => boolean,
  limit: () => number = () => Number.POSITIVE_INFINITY,
): Generator<number[]> {
  const asked = new Set<number>()
  let table = minimax(g, spans)
  let known = g.excluded.size
  const refresh = (): void => {
    if (known === g.excluded.size) return
    table = minimax(g, spans)
    known = g.excluded.size
  }
  const closed = (a: number, b: number): boolean => {
    const key = edgeKey(g, a, b)
    if (g.excluded.has(key)) return true
    if (asked.has(key)) return false
    asked.add(key)
    if (!rulesOut(a, b)) return false
    g.excluded.add(key)
    refresh()
    return true
  }
  function* walk(path: number[], left: number): Generator<number[]> {
    const a = path[path.length - 1]!
    if (left === 0) {
      yield path
      return
    }
    const even = (g.to - a) / left
    const next: { b: number; worst: number }[] = []
    for (let b = a + 1; b <= g.to; b++) {
      if (!open(g, a, b)) continue
      const worst = Math.max(g.cost[b - a]!, table[left - 1]![b]!)
      if (worst < Number.POSITIVE_INFINITY) next.push({ b, worst })
    }
    next.sort((p, q) => p.worst - q.worst || Math.abs(p.b - a - even) - Math.abs(q.b - a - even))
    for (const { b } of next) {
      if (closed(a, b)) continue
      const worst = Math.max(g.cost[b - a]!, table[left - 1]![b]!)
      if (worst === Number.POSITIVE_INFINITY || worst >= limit()) continue
      yield* walk([...path, b], left - 1)
    }
  }
  yield* walk([g.from], spans)
}
