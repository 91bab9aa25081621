import { given } from '../solver/explain'
import { compare } from './judge'
import type { Rule } from './rule'
import { eachTieBack, tieBackOf } from './subjects'
import { loopName, plural } from './words'

/** Neighbouring loops: the rule itself, not a figure of the basis. */
const WANTED = 0

export const tieBackLoopsAdjacent: Rule = {
  id: 'tie-back-loops-adjacent',
  subject: 'tie-back',
  title: 'Tie-back on neighbouring loops',
  asks: 'Are strap and tensioner on neighbouring loops?',
  source: 'common practice',
  check: (ctx) =>
    eachTieBack(ctx, (t, facts) => {
      const [strap, tensioner] = t.legs
      const between = typeof t.loopsBetween === 'number' ? t.loopsBetween : 0
      return compare(tieBackLoopsAdjacent, {
        subject: t.tieBack.id,
        line: facts.line.id,
        where: `Tie-back ${t.tieBack.id}`,
        value: t.loopsBetween,
        limit: WANTED,
        want: 'at most',
        unit: 'count',
        system: ctx.plan.units,
        tells: () =>
          `${plural(between, 'loop')} between strap (${loopName(strap.index)}) and tensioner (${loopName(tensioner.index)})`,
        wants: 'neighbouring loops',
        what: 'how far apart its loops are',
        limitSource: tieBackLoopsAdjacent.source,
        source: tieBackLoopsAdjacent.source,
        advice: 'Move them together.',
        otherwise: 'warn',
      })
    }),
  explain: (ctx, finding) =>
    tieBackOf(ctx, finding) && given('Loops between strap and tensioner', finding.value, 'count', 'the plan'),
}
