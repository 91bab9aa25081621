/** What stands beside the best: the best of every choice of parts, and the same with one stanchion more. */
import type { SearchCase } from './case'
import { progress, type Running, studyOne } from './count'
import { layouts } from './paths'
import { better } from './rank'
import type { Aim, Candidate, CountReport, FindProgress } from './types'

/** Layouts of one choice tried for the comparison, the likeliest first. */
const TRIES = 3

/** How many are kept. */
const KEPT = 8

/** One layout with `k` stanchions for every case, if one of the first few passes; it only stands beside the best. */
export function* oneMore(r: Running, cases: SearchCase[], k: number): Generator<FindProgress, void> {
  const aside: CountReport = { stanchions: k, status: 'not proven', studied: 0, reasons: [] }
  for (const c of cases) {
    let tried = 0
    for (const gaps of layouts(c.graph, k - 1, (a, b) => c.ruledOut(a, b) !== null)) {
      if (tried >= TRIES) break
      tried++
      yield progress(r, 'Comparing with one stanchion more', 0.95, k)
      const found = yield* studyOne(r, c, gaps, aside, { time: 0 })
      if (!found) continue
      r.passing.push(found)
      break
    }
  }
}

/** Passing layouts to keep: the best of every count and choice, then others; the best first. */
export function alternativesOf(passing: Candidate[], aims: Aim[]): Candidate[] {
  const order = (list: Candidate[]): Candidate[] => [...list].sort((a, b) => (better(a, b, aims) ? -1 : 1))
  const kinds = new Set<string>()
  const [firsts, others]: [Candidate[], Candidate[]] = [[], []]
  for (const c of order(passing)) {
    const kind = `${c.stanchions} ${JSON.stringify(c.layout.choice)}`
    if (kinds.has(kind)) others.push(c)
    else firsts.push(c)
    kinds.add(kind)
  }
  return order([...firsts, ...others].slice(0, KEPT))
}
