/**
 * The installed line and the unloaded line in service (mechanics section 2). Installing fixes the unstretched rope of
 * every span; in service that rope is lengthened by the temperature and hangs between heads that give.
 */

import type { Grip } from '../plan/types'
import { absorberExtension, addedRope } from './absorber'
import { bareChain, type Chain, freeChainAt, solveFreeChain } from './chain'
import { type LineModel, type LineSet, lineSet, type SetName, type Solved, solved, unsolved } from './model'
import type { FreeSpan } from './span'

export interface InstalledLine {
  set: LineSet
  spans: FreeSpan[]
  /** Unstretched rope in all spans less what the absorber has paid out already, m. */
  rope: number
  /** H of the first and of the last span, N: the heads stand as measured under these. */
  ends: [number, number]
}

/** The line of a set as installed: the pretension stands at the absorber's end, at the install temperature. */
export function installedLine(model: LineModel, name: SetName): Solved<InstalledLine> {
  const set = lineSet(model, name)
  const chain = { ...bareChain(set, model.x, model.z), absorberAt: model.absorberAt }
  const at = set.pretension > 0 ? freeChainAt(chain, set.pretension) : null
  if (!at) {
    return unsolved(`the rope cannot hang in its spans at a pretension of ${set.pretension.toFixed(1)} N`)
  }
  const paidOut = addedRope(set.absorber, set.pretension, set.stiffness).rope
  return solved({
    set,
    spans: at.spans,
    rope: at.length - paidOut,
    ends: [at.spans[0]!.H, at.spans[at.spans.length - 1]!.H],
  })
}

/** The unloaded line of a set at its service temperature. `chains` hold what a load on each span works against. */
export interface UnloadedLine {
  set: LineSet
  grip: Grip
  spans: FreeSpan[]
  /** Tension at the absorber's end, N, and the absorber's extension there, m. */
  tension: number
  absorberExtension: number
  /** Movement of the first and last head towards the line, m. */
  headShift: [number, number]
  /** One chain for a sliding rope; one for every span where it is held. */
  chains: Chain[]
}

/** The sliding chain: every span, both ends give, one rope. */
function slidingChain(model: LineModel, line: InstalledLine): Chain {
  return {
    ...bareChain(line.set, model.x, model.z),
    give: [1 / model.endStiffness[0], 1 / model.endStiffness[1]],
    heldAt: line.ends,
    absorber: line.set.absorber,
    absorberAt: model.absorberAt,
    rope: line.rope * line.set.thermalFactor,
  }
}

/** The chain of one span where the rope is held: only a head at an end of the line gives, only there acts the absorber. */
function heldChain(model: LineModel, line: InstalledLine, whole: Chain, i: number): Chain {
  const last = model.x.length - 2
  const atAbsorber = i === (model.absorberAt === 'start' ? 0 : last)
  const paidOut = atAbsorber ? addedRope(line.set.absorber, line.set.pretension, whole.EA).rope : 0
  return {
    ...whole,
    X: [whole.X[i]!],
    Z: [whole.Z[i]!],
    give: [i === 0 ? whole.give[0] : 0, i === last ? whole.give[1] : 0],
    heldAt: [line.spans[i]!.H, line.spans[i]!.H],
    absorber: atAbsorber ? whole.absorber : null,
    rope: (line.spans[i]!.L - paidOut) * line.set.thermalFactor,
  }
}

/** The unloaded line in service, from the same set's installed line. */
export function unloadedLine(model: LineModel, line: InstalledLine, grip: Grip): Solved<UnloadedLine> {
  const whole = slidingChain(model, line)
  const chains = grip === 'sliding' ? [whole] : line.spans.map((_, i) => heldChain(model, line, whole, i))
  const spans: FreeSpan[] = []
  let tension = line.set.pretension
  for (const [i, chain] of chains.entries()) {
    const at = solveFreeChain(chain, line.set.pretension)
    if (!at)
      return unsolved(`no unloaded line of the ${line.set.name} set at its service temperature (${grip})`)
    spans.push(...at.spans)
    if (grip === 'sliding' || i === (model.absorberAt === 'start' ? 0 : chains.length - 1))
      tension = at.tension
  }
  const lastH = spans[spans.length - 1]!.H
  return solved({
    set: line.set,
    grip,
    spans,
    tension,
    absorberExtension: absorberExtension(line.set.absorber, tension),
    headShift: [(spans[0]!.H - line.ends[0]) * whole.give[0], (lastH - line.ends[1]) * whole.give[1]],
    chains,
  })
}
