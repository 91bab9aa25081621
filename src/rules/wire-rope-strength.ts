import { explainRopeStrength } from '../solver/explain-line'
import type { Demand, LineFacts } from './context'
import type { Rule } from './rule'
import { explainStrength, type Strength, strengthFinding } from './strength'
import { eachLine, lineOf } from './subjects'

/** The wire rope at its termination under a tension. */
export function ropeStrength(facts: LineFacts, demand: Demand): Strength {
  const { breakingStrength, termination, source } = facts.wireRope
  return {
    name: 'the wire rope at its termination',
    capacity: breakingStrength * termination,
    demand,
    source,
    capacityTree: explainRopeStrength(breakingStrength, termination, source),
  }
}

export const wireRopeStrength: Rule = {
  id: 'wire-rope-strength',
  subject: 'line',
  title: 'Wire rope strength',
  asks: 'Is the rope, at its termination, strong enough for the governing tension?',
  source: 'OSHA 1926.502(d)(8)',
  check: (ctx) =>
    eachLine(ctx, (facts) =>
      strengthFinding(wireRopeStrength, ctx, {
        subject: facts.line.id,
        where: facts.line.name,
        line: facts,
        parts: [ropeStrength(facts, facts.tension)],
      }),
    ),
  explain: (ctx, finding) => {
    const facts = lineOf(ctx, finding)
    return facts && explainStrength('Wire rope', [ropeStrength(facts, facts.tension)], facts)
  },
}
