/** What a drag costs: a line, its room and its gaps; how that grows with spans, workers and lines. */
import type { Plan } from '../src/plan/types'
import { study } from '../src/study/study'
import { sample } from '../tests/support/sample'
import { ONCE, type Timed, timed } from './harness'

const folded = (plan: Plan, withoutTime: boolean): number[] => {
  const { results } = study(plan, { withoutTime })
  return [
    ...results.lines.flatMap((l) => [l.governing.tension ?? -1, ...l.floor.map((f) => f.depth ?? -1)]),
    ...results.obstacles.map((o) => o.gap ?? -1),
  ]
}

/** The same plan with its lines as often as asked, each with an id of its own. */
function timesLines(plan: Plan, times: number): Plan {
  const lines = Array.from({ length: times }, (_, k) =>
    plan.lines.map((l) => ({ ...l, id: `${l.id}-${k}` })),
  ).flat()
  const workers = Array.from({ length: times }, (_, k) =>
    plan.workers.map((w) => ({ ...w, id: `${w.id}-${k}`, line: `${w.line}-${k}` })),
  ).flat()
  return { ...plan, lines, workers }
}

export function bench(): Timed[] {
  const thin = sample('thin-margins')
  const bay = sample('four-girder-bay')
  if (ONCE) return [timed('study of one line of three spans, energy only (a drag)', () => folded(thin, true))]
  return [
    timed('study of one line of three spans, energy only (a drag)', () => folded(thin, true), 9),
    timed('the same with its falls in time (at rest)', () => folded(thin, false), 3, 1),
    timed('study of a bay of four girders and two lines, energy only', () => folded(bay, true), 5),
    timed('the same bay with 12 lines, energy only', () => folded(timesLines(bay, 6), true), 3, 1),
  ]
}
