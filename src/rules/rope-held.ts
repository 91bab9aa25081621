import type { LineFacts } from './context'
import type { Rule } from './rule'
import { stanchionStrengths } from './stanchion-strength'
import { explainStrength, type Strength, strengthFinding } from './strength'
import { eachLine, lineOf } from './subjects'
import { ropeStrength } from './wire-rope-strength'

const parts = (facts: LineFacts): Strength[] => [
  ropeStrength(facts, facts.heldTension),
  ...facts.stanchions.flatMap((s) =>
    stanchionStrengths(s, s.heldShaft, s.heldAxial).map((part) => ({
      ...part,
      name: `at stanchion ${s.stanchion.id} ${part.name}`,
    })),
  ),
]

function remark(facts: LineFacts): string {
  if (facts.stanchions.length < 3) return 'It has no intermediate stanchion: held and sliding are the same.'
  return facts.line.grip === 'held'
    ? 'Held is this line’s own grip: wire-rope-strength and stanchion-strength judge it.'
    : 'A bound for a rope that jams; it drags at intermediate stanchions.'
}

export const ropeHeld: Rule = {
  id: 'rope-held',
  subject: 'line',
  title: 'Rope held',
  asks: 'Would rope and stanchions still be strong enough if the rope jammed at intermediate stanchions?',
  source: 'statics',
  check: (ctx) =>
    eachLine(ctx, (facts) =>
      strengthFinding(ropeHeld, ctx, {
        subject: facts.line.id,
        where: `${facts.line.name}, rope held`,
        line: facts,
        parts: parts(facts),
        otherwise: 'warn',
        remark: remark(facts),
      }),
    ),
  explain: (ctx, finding) => {
    const facts = lineOf(ctx, finding)
    return facts && explainStrength('Lowest with the rope held', parts(facts), facts)
  },
}
