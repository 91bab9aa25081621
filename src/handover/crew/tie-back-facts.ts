/** Where each tie-back goes and how long its strap must be. SI units. */
import { loopNumber } from '../../geometry/loops'
import { strapLengths } from '../../solver/lengths'
import type { LineStudy } from '../../study/line-study'

export interface TieBackPlace {
  id: string
  stanchion: string
  strapLoop: number
  tensionerLoop: number
  strapRow: string
  tensionerRow: string
  /** Head to loop, strap and tensioner, m; null where the loop is not there. */
  legs: [number | null, number | null]
  needed: number | null
  left: number | null
  part: string
}

export function tieBacksOf(study: LineStudy): TieBackPlace[] {
  return study.input.stanchions.flatMap((s) =>
    s.tieBacks.map(({ tieBack, part, legs }): TieBackPlace => {
      const known = legs.every((l) => l.loop !== null)
      const strap = known
        ? strapLengths({
            legs: legs.map((l) => l.length),
            partLength: part.length,
            wrapLength: part.wrapLength,
          })
        : null
      return {
        id: tieBack.id,
        stanchion: tieBack.stanchion,
        strapLoop: loopNumber(tieBack.strapLoop.index),
        tensionerLoop: loopNumber(tieBack.tensionerLoop.index),
        strapRow: tieBack.strapLoop.row,
        tensionerRow: tieBack.tensionerLoop.row,
        legs: [legs[0].loop ? legs[0].length : null, legs[1].loop ? legs[1].length : null],
        needed: strap?.needed ?? null,
        left: strap?.left ?? null,
        part: part.name,
      }
    }),
  )
}
