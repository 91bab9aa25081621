/** Sums behind what a stanchion carries: head, legs, shaft, bracket and loops, in the fall that a demand is from. */
import { loopNumber } from '../../geometry/loops'
import type { Corner, Demand } from '../../rules/context'
import { cornerWords } from '../../rules/words'
import { derived, type Explained } from '../../solver/explain'
import { explainHead, explainLoops, type HeadExplained } from '../../solver/explain-head'
import type { HeadPull } from '../../solver/heads'
import type { StanchionInput } from '../line-input'
import type { LineStudy } from '../line-study'
import { fallOf } from './figures'

export interface StanchionExplained {
  head: HeadExplained
  /** One per engaged loop; null where nothing can hold the bracket, empty where no loop is engaged. */
  loops: Explained[] | null
  /** Zero where loops and bolts carry the bracket's load. */
  balance: Explained | null
}

/** How a head's pull is carried, as sums. `corner` says which fall it is from. */
export function explainStanchion(s: StanchionInput, pull: HeadPull, corner: string): StanchionExplained {
  const legs = s.isEnd
    ? s.tieBacks.flatMap((t) =>
        t.legs.map((leg) => ({
          label: `${t.tieBack.id}, ${leg.which} leg`,
          along: leg.along,
          across: leg.across,
          stiffness: t.part.stiffness,
          slack: !leg.farSide,
        })),
      )
    : []
  const head = explainHead({
    pull: pull.horizontal,
    down: pull.down,
    headStiffness: s.part.headStiffness,
    height: s.part.height,
    legs,
    sources: { stanchion: s.part.source, tieBack: s.tieBacks[0]?.part.source ?? s.part.source },
    corner,
  })
  return { head, ...loopSums(s, pull, head) }
}

function loopSums(s: StanchionInput, pull: HeadPull, head: HeadExplained) {
  const { loops } = s.engaged
  const [axial, moment] = [head.axial.value, head.baseMoment.value]
  if (loops.length === 0 || axial === null || moment === null) return { loops: [], balance: null }
  const held = explainLoops(
    {
      loops: loops.map((l) => l.station - s.stanchion.station),
      boltsAlong: s.bracket.boltsAlong,
      axial,
      moment: moment * Math.sign(pull.along),
    },
    loops.map((l) => `Loop ${loopNumber(l.index)}`),
  )
  return { loops: held?.loops ?? null, balance: held?.balance ?? null }
}

/** The sums of one stanchion in the fall that a demand is from; null where that fall has no figures. */
function stanchionAt(line: LineStudy, index: number, corner: Corner): StanchionExplained | null {
  const pull = fallOf(line, corner)?.heads?.[index]
  const s = line.input.stanchions[index]
  return pull && s ? explainStanchion(s, pull, cornerWords(corner, line.facts)) : null
}

/** The tree of a demand on a stanchion, picked from the sums of its fall. */
export function explainDemand(
  line: LineStudy,
  index: number,
  demand: Demand,
  pick: (s: StanchionExplained) => Explained | null | undefined,
): (() => Explained) | undefined {
  const { corner } = demand
  if (corner === undefined) return undefined
  const at = (): Explained | null | undefined => {
    const s = stanchionAt(line, index, corner)
    return s && pick(s)
  }
  return () =>
    at() ?? { label: 'Demand', value: null, unit: 'N', source: 'its fall has no figures', parts: [] }
}

/** The most pulled loop, with the bracket's load. */
export const mostPulled = (s: StanchionExplained): Explained | null =>
  s.loops === null || s.loops.length === 0
    ? null
    : derived('greatest', 'Pull in the most pulled loop', s.loops, { unit: 'N' })
