import { given } from '../solver/explain'
import { compare } from './judge'
import type { Rule } from './rule'
import { eachTieBack, tieBackOf } from './subjects'
import { loopName, plural } from './words'

/** Strap and tensioner each on their own: the rule itself, not a figure of the basis. */
const WANTED = 2

export const tieBackLoopsDistinct: Rule = {
  id: 'tie-back-loops-distinct',
  subject: 'tie-back',
  title: 'Tie-back on two loops',
  asks: 'Do strap and tensioner pull on different loops?',
  source: 'common practice',
  check: (ctx) =>
    eachTieBack(ctx, (t, facts) => {
      const [strap, tensioner] = t.legs
      const same = strap.row.id === tensioner.row.id && strap.index === tensioner.index
      const count = same ? 1 : 2
      const loops = same ? loopName(strap.index) : `${loopName(strap.index)} and ${loopName(tensioner.index)}`
      return compare(tieBackLoopsDistinct, {
        subject: t.tieBack.id,
        line: facts.line.id,
        where: `Tie-back ${t.tieBack.id}`,
        value: count,
        limit: WANTED,
        want: 'at least',
        unit: 'count',
        system: ctx.plan.units,
        tells: () => `strap and tensioner on ${plural(count, 'loop')} (${loops})`,
        wants: 'one each',
        limitSource: tieBackLoopsDistinct.source,
        source: tieBackLoopsDistinct.source,
        advice: 'Move one of them to the neighbouring loop.',
      })
    }),
  explain: (ctx, finding) =>
    tieBackOf(ctx, finding) && given('Different loops used', finding.value, 'count', 'the plan'),
}
