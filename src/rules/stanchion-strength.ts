import type { Demand, StanchionFacts } from './context'
import type { Rule } from './rule'
import { explainStrength, type Strength, strengthFinding } from './strength'
import { eachStanchion, stanchionOf } from './subjects'

/** What a stanchion's shaft and foot must carry under given demands; lift goes into the bracket. */
export function stanchionStrengths(
  s: StanchionFacts,
  shaft: Demand,
  axial: Demand,
  uplift?: Demand,
): Strength[] {
  const strengths: Strength[] = [
    { name: 'the head', capacity: s.part.headCapacity, demand: shaft, source: s.part.source },
    {
      name: 'the shaft, pressed,',
      capacity: s.part.axialCapacity,
      demand: axial,
      source: s.part.source,
    },
  ]
  if (uplift) {
    const capacity = s.bracket.upliftCapacity
    strengths.push({ name: 'the bracket, lifted,', capacity, demand: uplift, source: s.bracket.source })
  }
  return strengths
}

const parts = (s: StanchionFacts): Strength[] => stanchionStrengths(s, s.shaft, s.axial, s.uplift)

export const stanchionStrength: Rule = {
  id: 'stanchion-strength',
  subject: 'stanchion',
  title: 'Stanchion strength',
  asks: 'Is the stanchion strong enough for its shaft force and its axial force?',
  source: 'OSHA 1926.502(d)(8)',
  check: (ctx) =>
    eachStanchion(ctx, (s, line) =>
      strengthFinding(stanchionStrength, ctx, {
        subject: s.stanchion.id,
        where: `Stanchion ${s.stanchion.id}`,
        line,
        parts: parts(s),
      }),
    ),
  explain: (ctx, finding) => {
    const on = stanchionOf(ctx, finding)
    return on && explainStrength('Lower of head and shaft', parts(on.facts), on.line)
  },
}
