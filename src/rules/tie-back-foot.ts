/** Where a tie-back's foot should go instead: the nearest loop of its row that would do. */
import { loopStation } from '../geometry/loops'
import type { LegFacts, TieBackFacts } from './context'
import { loopName } from './words'

/** The leg with the smallest figure. */
export const smallerLeg = (t: TieBackFacts, figure: (leg: LegFacts) => number): LegFacts =>
  figure(t.legs[0]) <= figure(t.legs[1]) ? t.legs[0] : t.legs[1]

/** "Tie-back T1, strap leg". */
export const legName = (t: TieBackFacts, leg: LegFacts): string => `Tie-back ${t.tieBack.id}, ${leg.role} leg`

/**
 * "Move its foot from loop 6 to loop 8." with the nearest loop farther from the stanchion, on the same side, at which
 * `wouldDo` holds (distance along the girder, m) and where the other leg is not. Says so where the row has none.
 */
export function footAdvice(t: TieBackFacts, leg: LegFacts, wouldDo: (along: number) => boolean): string {
  const away = Math.sign(leg.station - t.stanchion.station)
  const other = t.legs.find((l) => l !== leg)
  if (away === 0) return 'Move its foot away from the stanchion.'
  const step = leg.row.spacing < 0 ? -away : away
  for (let i = leg.index + step; i >= 0 && i < leg.row.count; i += step) {
    const along = Math.abs(loopStation(leg.row, i) - t.stanchion.station)
    const taken = other !== undefined && other.row.id === leg.row.id && other.index === i
    if (!taken && wouldDo(along)) return `Move its foot from ${loopName(leg.index)} to ${loopName(i)}.`
  }
  return `No loop of row ${leg.row.id} lies far enough out on that side: move the stanchion away from it.`
}
