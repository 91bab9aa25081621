import { given } from '../solver/explain'
import { compare, unknownFinding } from './judge'
import type { Rule } from './rule'
import { eachLine, lineOf } from './subjects'
import { limitSource, sources, spanName } from './words'

export const lineSlope: Rule = {
  id: 'line-slope',
  subject: 'line',
  title: 'Line slope',
  asks: 'Is the steepest span flat enough for a line on which a worker is not to slide?',
  source: 'EN 795 type C',
  check: (ctx) =>
    eachLine(ctx, (facts) => {
      const { plan } = ctx
      const steepest = Math.max(...facts.spans.map((s) => s.slope))
      const which = spanName(
        facts,
        facts.spans.findIndex((s) => s.slope === steepest),
      )
      const head = {
        subject: facts.line.id,
        line: facts.line.id,
        where: facts.line.name,
        unit: 'deg',
        source: sources(lineSlope.source, limitSource(plan, 'maxSlope')),
      }
      if (!Number.isFinite(steepest))
        return unknownFinding(lineSlope, { ...head, what: 'slope' }, 'it has no span')
      return compare(lineSlope, {
        ...head,
        value: steepest,
        limit: plan.basis.maxSlope,
        want: 'at most',
        system: plan.units,
        tells: (v) => `steepest span ${v} against the horizontal (${which})`,
        limitSource: limitSource(plan, 'maxSlope'),
      })
    }),
  explain: (ctx, finding) =>
    lineOf(ctx, finding) && given('Steepest span, head to head', finding.value, 'deg', 'geometry'),
}
