import { given } from '../solver/explain'
import { isKnown } from './context'
import { compare } from './judge'
import type { Rule } from './rule'
import { eachLine, lineOf } from './subjects'
import { limitSource, sources } from './words'

export const eyeOffset: Rule = {
  id: 'eye-offset',
  subject: 'line',
  title: 'Eye before tensioning',
  asks: 'Does the rope’s eye lie at a workable distance from its end stanchion before tensioning?',
  source: 'common practice',
  check: (ctx) =>
    eachLine(ctx, (facts) => {
      const { plan } = ctx
      const { low, high } = plan.basis.eyeOffset
      // The nearer end of the range is the limit that is told.
      const near = isKnown(facts.eyeOffset) && facts.eyeOffset < (low + high) / 2
      return compare(eyeOffset, {
        subject: facts.line.id,
        line: facts.line.id,
        where: facts.line.name,
        value: facts.eyeOffset,
        limit: near ? low : high,
        want: near ? 'at least' : 'at most',
        unit: 'm',
        system: plan.units,
        tells: (v) => `the eye lies ${v} short of its end stanchion before tensioning`,
        what: 'place of the eye before tensioning',
        limitSource: limitSource(plan, 'eyeOffset'),
        source: sources(eyeOffset.source, limitSource(plan, 'eyeOffset')),
      })
    }),
  explain: (ctx, finding) => {
    const facts = lineOf(ctx, finding)
    return facts && (facts.explainEyeOffset?.() ?? given('Eye offset', finding.value, 'm', 'take-up'))
  },
}
