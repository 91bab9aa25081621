import { given } from '../solver/explain'
import { compare } from './judge'
import type { Rule } from './rule'
import { eachTieBack, tieBackOf } from './subjects'
import { loopName, plural } from './words'

/** Both legs: the rule itself, not a figure of the basis. */
const WANTED = 2

export const tieBackSide: Rule = {
  id: 'tie-back-side',
  subject: 'tie-back',
  title: 'Tie-back side',
  asks: 'Do both legs stand on the far side from the line?',
  source: 'common practice',
  check: (ctx) =>
    eachTieBack(ctx, (t, facts) => {
      const wrong = t.legs.filter((l) => !l.farSide)
      const count = t.legs.length - wrong.length
      return compare(tieBackSide, {
        subject: t.tieBack.id,
        line: facts.line.id,
        where: `Tie-back ${t.tieBack.id}`,
        value: count,
        limit: WANTED,
        want: 'at least',
        unit: 'count',
        system: ctx.plan.units,
        tells: () => `${plural(count, 'leg')} on the far side of stanchion ${t.stanchion.id} from the line`,
        wants: 'both',
        limitSource: tieBackSide.source,
        source: tieBackSide.source,
        advice: `A leg on the line’s side goes slack when the head is pulled. Move the foot of the ${wrong.map((l) => `${l.role} leg (${loopName(l.index)})`).join(' and of the ')} to the other side.`,
      })
    }),
  explain: (ctx, finding) =>
    tieBackOf(ctx, finding) &&
    given('Legs on the far side from the line', finding.value, 'count', 'geometry'),
}
