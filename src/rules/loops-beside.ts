import { derived, given } from '../solver/explain'
import { placeAdvice } from './bracket-place'
import { compare } from './judge'
import type { Rule } from './rule'
import { eachStanchion, stanchionOf } from './subjects'
import { limitSource, plural, sources } from './words'

export const loopsBeside: Rule = {
  id: 'loops-beside',
  subject: 'stanchion',
  title: 'Loops on either side',
  asks: 'Are there enough loops on both sides of the bracket?',
  source: 'common practice',
  check: (ctx) =>
    eachStanchion(ctx, (s, line) => {
      const { plan } = ctx
      const { before, after } = s.beside
      const fewer = Math.min(before, after)
      return compare(loopsBeside, {
        subject: s.stanchion.id,
        line: line.line.id,
        where: `Stanchion ${s.stanchion.id}`,
        value: fewer,
        limit: plan.basis.minLoopsBeside,
        want: 'at least',
        unit: 'count',
        system: plan.units,
        tells: () => `${plural(before, 'loop')} before it and ${after} after it on the tube`,
        limitSource: limitSource(plan, 'minLoopsBeside'),
        source: sources(loopsBeside.source, limitSource(plan, 'minLoopsBeside')),
        advice: placeAdvice(plan, s, line),
      })
    }),
  explain: (ctx, finding) => {
    const on = stanchionOf(ctx, finding)
    if (!on) return null
    const { before, after } = on.facts.beside
    const parts = [given('Before', before, 'count', 'geometry'), given('After', after, 'count', 'geometry')]
    return derived('least', 'Fewer of the two sides', parts)
  },
}
