import { compare } from './judge'
import type { Rule } from './rule'
import { demandNode } from './strength'
import { eachWorker, workerOf } from './subjects'
import { cornerSentence, limitSource, sources } from './words'

export const arrestForce: Rule = {
  id: 'arrest-force',
  subject: 'worker',
  title: 'Arrest force',
  asks: 'Is the force on one body within the limit?',
  source: 'OSHA 1926.502(d)(16)(ii)',
  check: (ctx) =>
    eachWorker(ctx, (w, line) => {
      const { plan } = ctx
      const from = limitSource(plan, 'maxArrestForce')
      return compare(arrestForce, {
        subject: w.worker.id,
        line: line.line.id,
        where: w.worker.name,
        value: w.arrestForce.value,
        ...(w.arrestForce.atLeast === undefined ? {} : { atBest: w.arrestForce.atLeast }),
        limit: plan.basis.maxArrestForce,
        want: 'at most',
        unit: 'N',
        system: plan.units,
        tells: (v) => `${v} on the body`,
        what: 'force on the body',
        limitSource: from,
        source: sources(arrestForce.source, from, w.connector.source),
        advice: 'A connector with a lower tearing force or a shorter free fall would lower it.',
        remark: cornerSentence(w.arrestForce.corner, line),
      })
    }),
  explain: (ctx, finding) => {
    const on = workerOf(ctx, finding)
    return on && demandNode('Arrest force on one body', 'N', on.facts.arrestForce, on.line)
  },
}
