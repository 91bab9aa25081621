import { given } from '../solver/explain'
import { compare } from './judge'
import type { Rule } from './rule'
import { eachStanchion, stanchionOf } from './subjects'
import { plural } from './words'

/** An end stanchion wants one: the rule itself, not a figure of the basis. */
const WANTED = 1

export const endTieBack: Rule = {
  id: 'end-tie-back',
  subject: 'stanchion',
  title: 'End tie-back',
  asks: 'Is every end stanchion tied back?',
  source: 'common practice',
  check: (ctx) =>
    eachStanchion(ctx, (s, facts) =>
      s.isEnd
        ? compare(endTieBack, {
            subject: s.stanchion.id,
            line: facts.line.id,
            where: `End stanchion ${s.stanchion.id}`,
            value: s.tieBackCount,
            limit: WANTED,
            want: 'at least',
            unit: 'count',
            system: ctx.plan.units,
            tells: () => plural(s.tieBackCount, 'tie-back'),
            limitSource: endTieBack.source,
            source: endTieBack.source,
            advice: 'Tie it back on the far side from the line.',
          })
        : null,
    ),
  explain: (ctx, finding) =>
    stanchionOf(ctx, finding) && given('Tie-backs of this stanchion', finding.value, 'count', 'the plan'),
}
