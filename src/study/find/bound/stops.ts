/** Which rules a span of some length breaks even at its best. */
import type { Basis } from '../../../plan/types'
import type { UnitSystem } from '../../../plan/units'
import { holds } from '../../../rules/judge'
import { say } from '../../../rules/words'
import { shareHeadPull } from '../../../solver/end-stanchion'
import { lineSet } from '../../../solver/model'
import type { LineInput } from '../../line-input'
import type { Reason } from '../types'
import type { SpanBound } from './span-bound'

/** Shares of a demand that may come of interpolating a law between its loads: what is nearer to a limit is studied whole. */
const CLOSE = 2e-4

interface Asked {
  rule: string
  name: string
  capacity: number
  demand: number
}

function asked(input: LineInput, bound: SpanBound): Asked[] {
  const list: Asked[] = []
  if (bound.tension !== null) {
    const demand = bound.tension * (1 - CLOSE)
    const { rope, hardware, absorber } = input
    list.push({
      rule: 'wire-rope-strength',
      name: 'the wire rope',
      capacity: rope.breakingStrength * rope.termination,
      demand,
    })
    for (const p of [...hardware, ...(absorber ? [absorber] : [])]) {
      list.push({ rule: 'hardware-strength', name: p.name, capacity: p.breakingStrength, demand })
    }
  }
  if (bound.pull !== null) {
    const pull = bound.pull * (1 - CLOSE)
    for (const s of input.stanchions) {
      const shares = shareHeadPull(s.support, pull, 0)
      const name = 'an end stanchion’s head'
      list.push({ rule: 'stanchion-strength', name, capacity: s.part.headCapacity, demand: shares.shaft })
      s.tieBacks.forEach((t, k) => {
        const demand = Math.max(shares.legs[2 * k] ?? 0, shares.legs[2 * k + 1] ?? 0)
        const capacity = t.part.breakingStrength
        list.push({ rule: 'tie-back-strength', name: 'a strap leg', capacity, demand })
      })
    }
  }
  return list
}

/** Rules that every layout with such a span breaks, each once; `length` in m along the girder. */
export function spanStops(
  input: LineInput,
  basis: Basis,
  system: UnitSystem,
  length: number,
  bound: SpanBound | null,
): Reason[] {
  const where = `A span of ${say(length, 'm', system)}`
  const reasons: Reason[] = []
  const limit = basis.maxSpan
  if (limit !== undefined && !holds(length, limit, 'at most')) {
    return [{ rule: 'anchor-spacing', text: `${where}: at most ${say(limit, 'm', system)} wanted.` }]
  }
  if (!bound) return reasons
  for (const a of asked(input, bound)) {
    if (reasons.some((r) => r.rule === a.rule)) continue
    if (!(a.demand > 0) || holds(a.capacity / a.demand, basis.safetyFactor, 'at least')) continue
    const ratio = (a.capacity / a.demand).toFixed(2)
    const text = `${where}: ${a.name} holds ${say(a.capacity, 'N', system)} against at least ${say(a.demand, 'N', system)}, ${ratio} to 1 at best.`
    reasons.push({ rule: a.rule, text })
  }
  const law = input.model.absorber && lineSet(input.model, 'stiff').absorber
  if (law && bound.absorber !== null && bound.absorber * (1 - CLOSE) > law.full) {
    const text = `${where}: at least ${say(bound.absorber, 'N', system)} in the rope, and the absorber has run out at ${say(law.full, 'N', system)}.`
    reasons.push({ rule: 'absorber-runs-out', text })
  }
  return reasons
}
