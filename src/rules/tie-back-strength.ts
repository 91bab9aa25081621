import type { LineFacts, TieBackFacts } from './context'
import type { Rule } from './rule'
import { explainStrength, type Strength, strengthFinding } from './strength'
import { eachTieBack, tieBackOf } from './subjects'

const parts = (t: TieBackFacts): Strength[] =>
  t.legs.map((leg) => ({
    name: `the ${leg.role} leg`,
    capacity: t.part.breakingStrength,
    demand: leg.force,
    source: t.part.source,
  }))

export const tieBackStrength: Rule = {
  id: 'tie-back-strength',
  subject: 'tie-back',
  title: 'Tie-back strength',
  asks: 'Is the tie-back strong enough for the larger leg force?',
  source: 'OSHA 1926.502(d)(8)',
  check: (ctx) =>
    eachTieBack(ctx, (t, line: LineFacts) =>
      strengthFinding(tieBackStrength, ctx, {
        subject: t.tieBack.id,
        where: `Tie-back ${t.tieBack.id}`,
        line,
        parts: parts(t),
      }),
    ),
  explain: (ctx, finding) => {
    const on = tieBackOf(ctx, finding)
    return on && explainStrength('Lower of both legs', parts(on.facts), on.line)
  },
}
