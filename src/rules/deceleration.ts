import { compare } from './judge'
import type { Rule } from './rule'
import { demandNode } from './strength'
import { eachWorker, workerOf } from './subjects'
import { cornerSentence, limitSource, sources } from './words'

export const deceleration: Rule = {
  id: 'deceleration',
  subject: 'worker',
  title: 'Deceleration distance',
  asks: 'Is the extension of the connector, elastic and torn, within the limit? Line drop does not count.',
  source: 'OSHA 1926.502(d)(16)(iv)',
  check: (ctx) =>
    eachWorker(ctx, (w, line) => {
      const { plan } = ctx
      const from = limitSource(plan, 'maxDeceleration')
      return compare(deceleration, {
        subject: w.worker.id,
        line: line.line.id,
        where: w.worker.name,
        value: w.extension.value,
        ...(w.extension.atLeast === undefined ? {} : { atBest: w.extension.atLeast }),
        limit: plan.basis.maxDeceleration,
        want: 'at most',
        unit: 'm',
        system: plan.units,
        tells: (v) => `${w.connector.name} extends by ${v}`,
        what: 'extension of the connector',
        limitSource: from,
        source: sources(deceleration.source, from, w.connector.source),
        advice: 'A shorter free fall or a connector with a higher tearing force would shorten it.',
        remark: cornerSentence(w.extension.corner, line),
      })
    }),
  explain: (ctx, finding) => {
    const on = workerOf(ctx, finding)
    return on && demandNode('Connector extension', 'm', on.facts.extension, on.line)
  },
}
