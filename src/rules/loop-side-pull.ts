import { bentCapacity, straightCapacity } from '../solver/bracket-capacity'
import { derived } from '../solver/explain'
import type { LegFacts, TieBackFacts } from './context'
import { isKnown, whyUnknown } from './context'
import { told, unknownFinding } from './judge'
import type { Rule } from './rule'
import { demandNode } from './strength'
import { eachTieBack, tieBackOf } from './subjects'
import { legName } from './tie-back-foot'
import { cornerSentence, loopName, say } from './words'

/** The leg with the larger force; one that is not known counts as larger. */
function largerLeg(t: TieBackFacts): LegFacts {
  const force = (l: LegFacts): number => (isKnown(l.force.value) ? l.force.value : Infinity)
  return force(t.legs[0]) >= force(t.legs[1]) ? t.legs[0] : t.legs[1]
}

const capacity = (leg: LegFacts): number => straightCapacity(leg.row.barDiameter, leg.row.yieldStress)

function components(t: TieBackFacts, leg: LegFacts, force: number): [number, string][] {
  const share = (distance: number): number => (force * distance) / leg.length
  return [
    [share(leg.along), 'along'],
    [share(leg.across), 'across'],
    [share(t.height), 'up'],
  ]
}

export const loopSidePull: Rule = {
  id: 'loop-side-pull',
  subject: 'tie-back',
  title: 'Side pull on a loop',
  asks: 'How far does a tie-back leg pull its loop askew? Always to be looked at.',
  source: 'statics',
  check: (ctx) =>
    eachTieBack(ctx, (t, line) => {
      const { units } = ctx.plan
      const leg = largerLeg(t)
      const where = legName(t, leg)
      const limit = capacity(leg)
      const head = {
        subject: t.tieBack.id,
        line: line.line.id,
        unit: 'N',
        limit,
        source: loopSidePull.source,
      }
      const force = leg.force.value
      if (!isKnown(force)) {
        return unknownFinding(loopSidePull, { ...head, where, what: 'pull on the loop' }, whyUnknown(force))
      }
      const n = (newtons: number): string => say(newtons, 'N', units)
      const pulls = components(t, leg, force).map(([f, way]) => `${n(f)} ${way}`)
      const bent = bentCapacity(leg.row.barDiameter, leg.row.yieldStress, leg.row.height)
      const yields =
        bent === null
          ? 'bent sideways it yields far earlier'
          : `bent sideways one leg of its bar yields at ${n(bent)}, pulled ${say(leg.row.height, 'm', units)} above the top`
      const text =
        `${where}: pulls ${loopName(leg.index)} askew with ${n(force)} (${pulls.join(', ')}). ` +
        `Pulled straight the loop yields at ${n(limit)}; ${yields}. ` +
        `Side pull and pull-out of the concrete are for the engineer of record.${cornerSentence(leg.force.corner, line)}`
      return { ...told(loopSidePull, { ...head, status: 'warn', value: force, text }), margin: limit - force }
    }),
  explain: (ctx, finding) => {
    const on = tieBackOf(ctx, finding)
    if (!on) return null
    const legs = on.facts.legs.map((l) => demandNode(`Force in the ${l.role} leg`, 'N', l.force, on.line))
    return derived('greatest', 'Larger leg force', legs, { unit: 'N' })
  },
}
