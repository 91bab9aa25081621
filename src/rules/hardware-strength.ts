import type { LineFacts } from './context'
import type { Rule } from './rule'
import { explainStrength, type Strength, strengthFinding } from './strength'
import { eachLine, lineOf } from './subjects'

/** Everything in series with the rope. */
const parts = (facts: LineFacts): Strength[] =>
  [...facts.hardware, ...(facts.absorber ? [facts.absorber] : [])].map((p) => ({
    name: p.name,
    capacity: p.breakingStrength,
    demand: facts.tension,
    source: p.source,
  }))

export const hardwareStrength: Rule = {
  id: 'hardware-strength',
  subject: 'line',
  title: 'Hardware strength',
  asks: 'Is the weakest hardware or absorber strong enough for the governing tension?',
  source: 'OSHA 1926.502(d)(8)',
  check: (ctx) =>
    eachLine(ctx, (facts) =>
      parts(facts).length === 0
        ? null
        : strengthFinding(hardwareStrength, ctx, {
            subject: facts.line.id,
            where: facts.line.name,
            line: facts,
            parts: parts(facts),
          }),
    ),
  explain: (ctx, finding) => {
    const facts = lineOf(ctx, finding)
    return facts && explainStrength('Weakest of hardware and absorber', parts(facts), facts)
  },
}
