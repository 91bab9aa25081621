import { isKnown } from './context'
import { compare, holds } from './judge'
import type { Rule } from './rule'
import { demandNode } from './strength'
import { eachLine, lineOf } from './subjects'
import { cornerSentence, sources } from './words'

export const absorberRunsOut: Rule = {
  id: 'absorber-runs-out',
  subject: 'line',
  title: 'Line absorber',
  asks: 'Does the line absorber stay within its full extension?',
  source: 'part',
  check: (ctx) =>
    eachLine(ctx, (facts) => {
      const { absorber, absorberExtension } = facts
      if (absorber === null || absorberExtension === null) return null
      const { value, atLeast, corner } = absorberExtension
      const known = isKnown(value) ? value : (atLeast ?? 0)
      const out = !holds(known, absorber.maxExtension, 'at most')
      return compare(absorberRunsOut, {
        subject: facts.line.id,
        line: facts.line.id,
        where: `${facts.line.name}, ${absorber.name}`,
        value,
        ...(atLeast === undefined ? {} : { atBest: atLeast }),
        limit: absorber.maxExtension,
        want: 'at most',
        unit: 'm',
        system: ctx.plan.units,
        tells: (v) => `extends by ${v}`,
        what: 'extension',
        limitSource: absorber.source,
        source: sources(absorberRunsOut.source, absorber.source),
        advice: 'Take an absorber that takes more, shorten the free fall, or add a stanchion.',
        remark:
          (out
            ? 'It has run out: past its full extension the line is taken as a stiff spring, and the numbers mean little.'
            : '') + cornerSentence(corner, facts),
      })
    }),
  explain: (ctx, finding) => {
    const facts = lineOf(ctx, finding)
    return facts?.absorberExtension
      ? demandNode('Greatest extension of the absorber', 'm', facts.absorberExtension, facts)
      : null
  },
}
