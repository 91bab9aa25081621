import { derived, given } from '../solver/explain'
import { compare, holds } from './judge'
import type { Rule } from './rule'
import { eachTieBack, tieBackOf } from './subjects'
import { footAdvice, legName, smallerLeg } from './tie-back-foot'

export const tieBackDistance: Rule = {
  id: 'tie-back-distance',
  subject: 'tie-back',
  title: 'Tie-back distance',
  asks: 'Is the nearer foot as far from the stanchion as the stanchion is high?',
  source: 'common practice',
  check: (ctx) =>
    eachTieBack(ctx, (t, facts) => {
      const leg = smallerLeg(t, (l) => l.along)
      // Feet go where loops are: half a loop spacing short is told, not failed.
      const nearly = holds(leg.along, t.height - leg.row.spacing / 2, 'at least')
      return compare(tieBackDistance, {
        subject: t.tieBack.id,
        line: facts.line.id,
        where: legName(t, leg),
        value: leg.along,
        limit: t.height,
        want: 'at least',
        unit: 'm',
        system: ctx.plan.units,
        tells: (v) => `foot ${v} from the stanchion along the girder`,
        limitSource: `the stanchion’s height, ${tieBackDistance.source}`,
        source: tieBackDistance.source,
        advice: footAdvice(t, leg, (along) => along >= t.height),
        ...(nearly ? { otherwise: 'warn' as const } : {}),
      })
    }),
  explain: (ctx, finding) => {
    const on = tieBackOf(ctx, finding)
    if (!on) return null
    const parts = on.facts.legs.map((l) => given(`${l.role} leg, along the girder`, l.along, 'm', 'geometry'))
    return derived('least', 'Nearer foot, along the girder', parts)
  },
}
