import { found } from '../solver/explain'
import { isKnown, type ObstacleFacts, type RuleContext, whyUnknown } from './context'
import type { Finding } from './finding'
import { told, unknownFinding } from './judge'
import type { Rule } from './rule'
import { obstacleOf } from './subjects'
import { say } from './words'

/** No contact: the rule itself, not a figure of the basis. */
const LIMIT = 0

export const obstacleGap: Rule = {
  id: 'obstacle-gap',
  subject: 'obstacle',
  title: 'Room below',
  asks: 'Does the fall room stay clear of everything below and beside it?',
  source: 'OSHA 1926.502(d)(16)(iii)',
  check: (ctx) => ctx.obstacles.map((o) => gapFinding(ctx, o)),
  explain: (ctx, finding) => {
    const o = obstacleOf(ctx, finding)
    if (!o || o.gap === null) return null
    const own = o.explain?.()
    if (own) return own
    const value = isKnown(o.gap) ? o.gap : null
    return found('Least vertical gap, margin taken off', value, 'm', 'underside of the fall room')
  },
}

function gapFinding(ctx: RuleContext, o: ObstacleFacts): Finding {
  const { units } = ctx.plan
  const name = o.name.trim() === '' ? o.id : `${o.name[0]!.toUpperCase()}${o.name.slice(1)}`
  const head = {
    subject: o.id,
    unit: 'm',
    limit: LIMIT,
    source: obstacleGap.source,
    ...(o.line === null ? {} : { line: o.line }),
  }
  if (o.gap === null) {
    const beside = o.horizontal === null ? '' : `, ${say(o.horizontal, 'm', units)} away horizontally`
    return told(obstacleGap, {
      ...head,
      status: 'pass',
      value: null,
      text: `${name}: outside the plan area of every fall room${beside}.`,
    })
  }
  if (!isKnown(o.gap)) {
    return unknownFinding(obstacleGap, { ...head, where: name, what: 'gap' }, whyUnknown(o.gap))
  }
  const clash = o.gap < LIMIT
  const text = clash
    ? `${name}: the fall room reaches ${say(-o.gap, 'm', units)} into it${place(ctx, o)}.`
    : `${name}: ${say(o.gap, 'm', units)} free below the fall room${place(ctx, o)}.`
  const status = clash ? 'fail' : 'pass'
  return { ...told(obstacleGap, { ...head, status, value: o.gap, text }), margin: o.gap - LIMIT }
}

/** ", its margin of 0.30 m included (Line 1, station 5.90 m, Worker W1)". */
function place(ctx: RuleContext, o: ObstacleFacts): string {
  const { units } = ctx.plan
  const margin = o.margin > 0 ? `, its margin of ${say(o.margin, 'm', units)} counted` : ''
  const line = ctx.lines.find((l) => l.line.id === o.line)
  const at = [
    line?.line.name ?? '',
    o.station === null ? '' : `station ${say(o.station, 'm', units)}`,
    line?.workers.find((w) => w.worker.id === o.worker)?.worker.name ?? '',
  ].filter(Boolean)
  return at.length > 0 ? `${margin} (${at.join(', ')})` : margin
}
