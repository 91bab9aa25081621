import type { RescuePlanRecord } from '../plan/types'
import { given } from '../solver/explain'
import type { RuleContext } from './context'
import { told } from './judge'
import type { Rule } from './rule'
import { eachLine, lineOf } from './subjects'
import { plural } from './words'

/** The last rescue plan recorded for a line. */
const recorded = (ctx: RuleContext, line: string): RescuePlanRecord | undefined =>
  (ctx.plan.records ?? []).filter((r) => r.kind === 'rescue-plan').findLast((r) => r.line === line)

/** What a record leaves empty; a plan that is not filled in is none. */
function missing(r: RescuePlanRecord): string[] {
  const gaps: [boolean, string][] = [
    [r.method.trim() === '', 'method'],
    [r.gear.trim() === '', 'gear'],
    [!(r.people > 0), 'people'],
    [!(r.minutes > 0), 'time'],
  ]
  return gaps.filter(([gap]) => gap).map(([, name]) => name)
}

export const rescuePlan: Rule = {
  id: 'rescue-plan',
  subject: 'line',
  title: 'Rescue plan',
  asks: 'Is it recorded how a hanging worker is reached: from where, with what, by whom, in what time?',
  source: 'OSHA 1926.502(d)(20)',
  check: (ctx) =>
    eachLine(ctx, ({ line }) => {
      const record = recorded(ctx, line.id)
      const gaps = record ? missing(record) : []
      const good = record !== undefined && gaps.length === 0
      const says = record
        ? good
          ? `rescue plan recorded: ${record.method}, ${plural(record.people, 'person').replace('persons', 'people')}, ${record.minutes} min.`
          : `rescue plan recorded without ${gaps.join(', ')}. Record it whole.`
        : 'no rescue plan recorded. Record method, gear, people and time before the line is used.'
      return told(rescuePlan, {
        subject: line.id,
        line: line.id,
        unit: 'count',
        source: rescuePlan.source,
        status: good ? 'pass' : 'fail',
        value: good ? 1 : 0,
        limit: 1,
        text: `${line.name}: ${says}`,
      })
    }),
  explain: (ctx, finding) =>
    lineOf(ctx, finding) &&
    given('Rescue plans recorded, filled in', finding.value, 'count', 'the plan’s records'),
}
