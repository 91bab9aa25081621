/** Why a count of stanchions cannot do, in sentences. */
import type { Plan } from '../../plan/types'
import { say } from '../../rules/words'
import type { SearchCase } from './case'
import type { Places } from './places'
import type { Reason } from './types'

/**
 * With k - 1 spans at least one is as long as the mean: where every length from there on is ruled out, the rules that do
 * so stop the count. `have`: reasons that are known already. Otherwise gaps that are not fit or places that are ruled out leave no way through.
 */
export function countReasons(
  plan: Plan,
  places: Places,
  cases: SearchCase[],
  stanchions: number,
  have: Reason[] = [],
): Reason[] {
  const out: Reason[] = []
  const add = (r: Reason): void => {
    if (!out.some((x) => x.rule === r.rule)) out.push(r)
  }
  for (const c of cases) {
    const whole = c.graph.to - c.graph.from
    const needed = Math.ceil(whole / (stanchions - 1))
    const reasons = c.stopped.get(needed) ?? []
    const spacing = places.stations[1]! - places.stations[0]!
    const text = `With ${stanchions} stanchions one span is ${say(needed * spacing, 'm', plan.units)} or more.`
    for (const r of reasons) add({ rule: r.rule, text: `${text} ${r.text}` })
  }
  // Spans that clash at their places stay ruled out for every count.
  for (const c of cases) for (const r of c.clashes.values()) add(r)
  const none = (): boolean => out.length + have.length === 0
  if (none()) for (const r of places.reasons) add(r)
  if (none()) add({ rule: 'loops-engaged', text: gapsWords(places, cases, stanchions) })
  return out
}

function gapsWords(places: Places, cases: SearchCase[], stanchions: number): string {
  const between = (c: SearchCase): number =>
    places.fit.filter((fit, gap) => fit && gap > c.graph.from && gap < c.graph.to).length
  const most = Math.max(0, ...cases.map(between))
  return `Between the ends ${most} gaps are fit for a stanchion, and no ${stanchions - 2} of them make spans that could pass.`
}
