/** What every stanchion carries: the reported corner, and the worst of each part over all corners. */
import { type Demand, worstDemand } from '../rules/context'
import { bracketForces } from '../solver/bracket'
import { type HeadShares, shareHeadPull } from '../solver/end-stanchion'
import type { HeadPull } from '../solver/heads'
import type { LineInput, StanchionInput } from './line-input'
import type { StanchionResult } from './results'
import { factCorner, type StudiedFall } from './studied-fall'

/** One fall at one stanchion. */
export interface StanchionCase {
  of: StudiedFall
  pull: HeadPull
  shares: HeadShares
  /** Pull in each engaged loop; null where nothing can hold the bracket. */
  loops: number[] | null
}

/** Loop pulls of a bracket: the moment presses the side to which the head is pulled. */
function loopPulls(s: StanchionInput, pull: HeadPull, shares: HeadShares): number[] | null {
  if (s.engaged.loops.length === 0) return []
  const held = bracketForces({
    loops: s.engaged.loops.map((l) => l.station - s.stanchion.station),
    boltsAlong: s.bracket.boltsAlong,
    axial: shares.axial,
    moment: shares.baseMoment * Math.sign(pull.along),
  })
  return held?.loops ?? null
}

/** How one pull on a head is carried by that stanchion. */
function stanchionCase(s: StanchionInput, pull: HeadPull, of: StudiedFall): StanchionCase {
  const shares = shareHeadPull(s.support, pull.horizontal, pull.down)
  return { of, pull, shares, loops: loopPulls(s, pull, shares) }
}

/** The cases of stanchion `index` over falls, those without figures left out. */
export function casesOf(input: LineInput, index: number, falls: StudiedFall[]): StanchionCase[] {
  const s = input.stanchions[index]!
  return falls.flatMap((f) => (f.heads ? [stanchionCase(s, f.heads[index]!, f)] : []))
}

const resultant = (p: HeadPull): number => Math.hypot(p.horizontal, p.down)

/** The corner that the results tell: the energy fall at the line's grip that pulls hardest on this head. */
export function stanchionResult(s: StanchionInput, cases: StanchionCase[]): StanchionResult {
  const legs = s.isEnd ? s.tieBacks.flatMap((t) => t.legs) : []
  const working = legs.map((l) => l.angle)
  const common = {
    id: s.stanchion.id,
    tieBackAngle: working.length > 0 ? Math.min(...working) : null,
    engagedLoops: s.engaged.loops.length,
  }
  if (cases.length === 0) {
    return {
      ...common,
      head: { along: null, across: null, down: null },
      tieBackForce: null,
      legForces: legs.map(() => null),
      shaftForce: null,
      axial: null,
      baseMoment: null,
      loopForces: null,
    }
  }
  const worst = cases.reduce((a, b) => (resultant(b.pull) > resultant(a.pull) ? b : a))
  const { shares, pull } = worst
  return {
    ...common,
    head: { along: Math.abs(pull.along), across: Math.abs(pull.across), down: pull.down },
    tieBackForce: shares.tieBackForce,
    legForces: shares.legs,
    shaftForce: shares.shaft,
    axial: shares.axial,
    baseMoment: shares.baseMoment,
    loopForces: worst.loops,
  }
}

/** The worst over cases of one figure; falls without figures make it unknown and keep the rest as `atLeast`. */
export function demandOf(
  falls: StudiedFall[],
  cases: StanchionCase[],
  figure: (c: StanchionCase) => number,
): Demand {
  const missing = falls
    .filter((f) => f.heads === null)
    .map((f) => ({ value: { unknown: f.why ?? 'a fall is not known' } }))
  return worstDemand([...cases.map((c) => ({ value: figure(c), corner: factCorner(c.of.fall) })), ...missing])
}

/** The greatest pull in one loop over all cases; null where at some corner nothing can hold the bracket. */
export function loopDemand(falls: StudiedFall[], cases: StanchionCase[]): Demand | null {
  if (cases.some((c) => c.loops === null)) return null
  return demandOf(falls, cases, (c) => Math.max(0, ...(c.loops ?? [])))
}
