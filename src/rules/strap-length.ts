import { derived, given } from '../solver/explain'
import { isKnown } from './context'
import { compare } from './judge'
import type { Rule } from './rule'
import { eachTieBack, tieBackOf } from './subjects'
import { say, sources } from './words'

export const strapLength: Rule = {
  id: 'strap-length',
  subject: 'tie-back',
  title: 'Strap length',
  asks: 'Is the strap long enough for both legs and one turn on the spool?',
  source: 'common practice',
  check: (ctx) =>
    eachTieBack(ctx, (t, facts) => {
      const left = isKnown(t.strapNeeded) ? t.part.length - t.strapNeeded : Number.NaN
      return compare(strapLength, {
        subject: t.tieBack.id,
        line: facts.line.id,
        where: `Tie-back ${t.tieBack.id}`,
        value: t.strapNeeded,
        limit: t.part.length,
        want: 'at most',
        unit: 'm',
        system: ctx.plan.units,
        tells: (v) => `both legs and one turn on the spool take ${v} of strap`,
        limitSource: `the length of ${t.part.name}`,
        source: sources(strapLength.source, undefined, t.part.source),
        advice: 'Bring the feet closer or take a longer strap.',
        remark: left > 0 ? `${say(left, 'm', ctx.plan.units)} is left over: wrap and secure it.` : '',
      })
    }),
  explain: (ctx, finding) => {
    const on = tieBackOf(ctx, finding)
    if (!on) return null
    const legs = on.facts.legs.map((l) => given(`${l.role} leg`, l.length, 'm', 'geometry'))
    const turn = given('One turn on the spool', on.facts.part.wrapLength, 'm', on.facts.part.source)
    return derived('sum', 'Strap needed', [...legs, turn])
  },
}
