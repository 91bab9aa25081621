import { given } from '../solver/explain'
import { compare, told } from './judge'
import type { Rule } from './rule'
import { eachWorker, workerOf } from './subjects'
import { say, sources } from './words'

export const workerMass: Rule = {
  id: 'worker-mass',
  subject: 'worker',
  title: 'Worker’s mass',
  asks: 'Is the worker’s mass within what the connector is rated for?',
  source: 'part',
  check: (ctx) =>
    eachWorker(ctx, (w, line) => {
      const { units } = ctx.plan
      const { connector, worker } = w
      const head = {
        subject: worker.id,
        line: line.line.id,
        unit: 'kg',
        source: sources(workerMass.source, connector.source),
      }
      const rated = connector.ratedMass
      if (rated === undefined) {
        const text = `${worker.name}: ${say(worker.mass, 'kg', units)}; ${connector.name} states no range of mass.`
        return told(workerMass, { ...head, status: 'pass', value: worker.mass, text })
      }
      const light = worker.mass < (rated.low + rated.high) / 2
      return compare(workerMass, {
        ...head,
        where: worker.name,
        value: worker.mass,
        limit: light ? rated.low : rated.high,
        want: light ? 'at least' : 'at most',
        system: units,
        tells: (v) => `${v}, dressed and with tools`,
        limitSource: `rating of ${connector.name}`,
        advice: 'Choose a connector rated for this mass.',
      })
    }),
  explain: (ctx, finding) =>
    workerOf(ctx, finding) && given('Mass, dressed and with tools', finding.value, 'kg', 'the plan', 'm'),
}
