import { isKnown } from './context'
import { compare, holds } from './judge'
import type { Rule } from './rule'
import { demandNode } from './strength'
import { eachWorker, workerOf } from './subjects'
import { cornerSentence, sources } from './words'

export const connectorRunsOut: Rule = {
  id: 'connector-runs-out',
  subject: 'worker',
  title: 'Connector absorber',
  asks: 'Does the connector stop the fall before it is torn to its end?',
  source: 'part',
  check: (ctx) =>
    eachWorker(ctx, (w, line) => {
      const { value, atLeast, corner } = w.torn
      const limit = w.connector.maxExtension
      const out = !holds(isKnown(value) ? value : (atLeast ?? 0), limit, 'less than')
      return compare(connectorRunsOut, {
        subject: w.worker.id,
        line: line.line.id,
        where: w.worker.name,
        value,
        ...(atLeast === undefined ? {} : { atBest: atLeast }),
        limit,
        want: 'less than',
        unit: 'm',
        system: ctx.plan.units,
        tells: (v) => `${w.connector.name} tears by ${v}`,
        what: 'torn length of the connector',
        limitSource: w.connector.source,
        source: sources(connectorRunsOut.source, w.connector.source),
        advice: 'A shorter free fall or a connector that tears farther is needed.',
        remark:
          (out ? 'It has run out: past its end the force climbs steeply, and the numbers mean little.' : '') +
          cornerSentence(corner, line),
      })
    }),
  explain: (ctx, finding) => {
    const on = workerOf(ctx, finding)
    return on && demandNode('Torn length of the connector', 'm', on.facts.torn, on.line)
  },
}
