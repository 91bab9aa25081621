import { derived, given } from '../solver/explain'
import { compare } from './judge'
import type { Rule } from './rule'
import { eachTieBack, tieBackOf } from './subjects'
import { footAdvice, legName, smallerLeg } from './tie-back-foot'
import { limitSource, sources } from './words'

/** Angle from the vertical of a leg with its foot `along` and `across` away, degrees. */
const angleAt = (along: number, across: number, height: number): number =>
  (Math.atan2(Math.hypot(along, across), height) * 180) / Math.PI

export const tieBackAngle: Rule = {
  id: 'tie-back-angle',
  subject: 'tie-back',
  title: 'Tie-back angle',
  asks: 'Does the steeper leg lean far enough from the vertical?',
  source: 'common practice',
  check: (ctx) =>
    eachTieBack(ctx, (t, facts) => {
      const { plan } = ctx
      const leg = smallerLeg(t, (l) => l.angle)
      const limit = plan.basis.minTieBackAngle
      return compare(tieBackAngle, {
        subject: t.tieBack.id,
        line: facts.line.id,
        where: legName(t, leg),
        value: leg.angle,
        limit,
        want: 'at least',
        unit: 'deg',
        system: plan.units,
        tells: (v) => `${v} from the vertical`,
        limitSource: limitSource(plan, 'minTieBackAngle'),
        source: sources(tieBackAngle.source, limitSource(plan, 'minTieBackAngle')),
        advice: footAdvice(t, leg, (along) => angleAt(along, leg.across, t.height) >= limit),
      })
    }),
  explain: (ctx, finding) => {
    const on = tieBackOf(ctx, finding)
    if (!on) return null
    const leg = smallerLeg(on.facts, (l) => l.angle)
    const height = given('Stanchion height', on.facts.height, 'm', 'part', 'h')
    const length = derived('legLength', 'Leg length', [
      given('Along the girder', leg.along, 'm', 'geometry', 'a'),
      given('Across the girder', leg.across, 'm', 'geometry', 'b'),
      height,
    ])
    return derived('legAngle', 'Angle from the vertical', [height, length], { unit: 'deg', value: leg.angle })
  },
}
