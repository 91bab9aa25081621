import { isKnown } from './context'
import { compare } from './judge'
import type { Rule } from './rule'
import { demandNode } from './strength'
import { eachWorker, workerOf } from './subjects'
import { limitSource, say, sources } from './words'

export const freeFall: Rule = {
  id: 'free-fall',
  subject: 'worker',
  title: 'Free fall',
  asks: 'Is the free fall within the limit and within what the connector is rated for?',
  source: 'OSHA 1926.502(d)(16)(iii)',
  check: (ctx) =>
    eachWorker(ctx, (w, line) => {
      const { plan } = ctx
      const { connector } = w
      const rated = connector.ratedFreeFall < plan.basis.maxFreeFall
      const limit = Math.min(plan.basis.maxFreeFall, connector.ratedFreeFall)
      const from = rated ? `rating of ${connector.name}` : limitSource(plan, 'maxFreeFall')
      const over = isKnown(w.freeFall.value) ? w.freeFall.value - limit : 0
      const shorter = connector.length - over
      return compare(freeFall, {
        subject: w.worker.id,
        line: line.line.id,
        where: w.worker.name,
        value: w.freeFall.value,
        ...(w.freeFall.atLeast === undefined ? {} : { atBest: w.freeFall.atLeast }),
        limit,
        want: 'at most',
        unit: 'm',
        system: plan.units,
        tells: (v) => `free fall ${v} on ${connector.name}`,
        limitSource: from,
        source: sources(freeFall.source, from),
        advice:
          shorter > 0
            ? `A connector of ${say(Math.floor(shorter * 1000) / 1000, 'm', plan.units)} or less would do.`
            : 'Put the line higher.',
      })
    }),
  explain: (ctx, finding) => {
    const on = workerOf(ctx, finding)
    return on && demandNode('Free fall', 'm', on.facts.freeFall, on.line)
  },
}
