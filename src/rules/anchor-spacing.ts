import { given } from '../solver/explain'
import type { LineFacts } from './context'
import { compare, told, unknownFinding } from './judge'
import type { Rule } from './rule'
import { eachLine, lineOf } from './subjects'
import { limitSource, say, sources, spanName } from './words'

/** Index of the longest span, or -1. */
const longest = (facts: LineFacts): number =>
  facts.spans.reduce((best, s, i) => (best < 0 || s.length > facts.spans[best]!.length ? i : best), -1)

export const anchorSpacing: Rule = {
  id: 'anchor-spacing',
  subject: 'line',
  title: 'Anchor spacing',
  asks: 'Is the longest span within what the parts’ documentation allows?',
  source: 'parts’ documentation',
  check: (ctx) =>
    eachLine(ctx, (facts) => {
      const { plan } = ctx
      const i = longest(facts)
      const span = facts.spans[i]
      const head = {
        subject: facts.line.id,
        line: facts.line.id,
        where: facts.line.name,
        unit: 'm',
        source: sources(anchorSpacing.source, limitSource(plan, 'maxSpan')),
      }
      if (!span) return unknownFinding(anchorSpacing, { ...head, what: 'anchor spacing' }, 'it has no span')
      const which = spanName(facts, i)
      const limit = plan.basis.maxSpan
      if (limit === undefined) {
        const text = `${facts.line.name}: longest span ${say(span.length, 'm', plan.units)} (${which}); not limited by the basis.`
        const source = anchorSpacing.source
        return told(anchorSpacing, { ...head, source, status: 'pass', value: span.length, text })
      }
      return compare(anchorSpacing, {
        ...head,
        value: span.length,
        limit,
        want: 'at most',
        system: plan.units,
        tells: (v) => `longest span ${v} (${which})`,
        limitSource: limitSource(plan, 'maxSpan'),
        advice: `Add a stanchion between ${which.replace(' to ', ' and ')}.`,
      })
    }),
  explain: (ctx, finding) =>
    lineOf(ctx, finding) && given('Longest span, station to station', finding.value, 'm', 'geometry'),
}
