/** Where a bracket would engage more loops: the nearest gap of its row that meets both counts. */
import { engagedLoops } from '../geometry/loops'
import type { Plan } from '../plan/types'
import type { LineFacts, StanchionFacts } from './context'
import { loopName, say } from './words'

/** Farther than this nobody moves a stanchion for its loops, in loop spacings. */
const REACH = 12

/** Advice to move the stanchion, or that the tube is too short for this row. */
export function placeAdvice(plan: Plan, s: StanchionFacts, line: LineFacts): string {
  const row = s.row
  if (row === null) return 'Put it over a loop row.'
  const here = (s.stanchion.station - row.first) / row.spacing - 0.5
  const gaps = Array.from({ length: 2 * REACH + 1 }, (_, i) => Math.round(here) + i - REACH)
    .filter((gap) => gap >= 0 && gap < row.count - 1)
    .sort((a, b) => Math.abs(a - here) - Math.abs(b - here))
  for (const gap of gaps) {
    const station = row.first + row.spacing * (gap + 0.5)
    const at = engagedLoops(line.girder, station, s.stanchion.offset, s.bracket.tubeLength)
    const beside = Math.min(at.before, at.after)
    if (at.loops.length >= plan.basis.minLoopsEngaged && beside >= plan.basis.minLoopsBeside) {
      return `Move it to station ${say(station, 'm', plan.units)}, between ${loopName(gap)} and ${loopName(gap + 1)}.`
    }
  }
  return 'No gap of the row nearby engages enough loops: take a bracket with a longer tube.'
}

/** "loops 6 to 9", "loop 6", "no loop". */
export function engagedText(s: StanchionFacts): string {
  const [first, last] = [s.engaged[0], s.engaged[s.engaged.length - 1]]
  if (!first || !last) return 'no loop'
  return first.index === last.index
    ? loopName(first.index)
    : `${loopName(first.index).replace('loop', 'loops')} to ${last.index + 1}`
}
