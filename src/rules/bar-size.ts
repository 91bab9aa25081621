import { given } from '../solver/explain'
import { compare } from './judge'
import type { Rule } from './rule'
import { rowOf } from './subjects'
import { limitSource, sources } from './words'

export const barSize: Rule = {
  id: 'bar-size',
  subject: 'loop-row',
  title: 'Bar of the loops',
  asks: 'Are the loops of every row in use bent from a thick enough bar?',
  source: 'common practice',
  check: (ctx) =>
    ctx.rows.map(({ row, girder, lines }) =>
      compare(barSize, {
        subject: row.id,
        ...(lines[0] === undefined ? {} : { line: lines[0] }),
        where: `Loop row ${row.id} of ${girder.name}`,
        value: row.barDiameter,
        limit: ctx.plan.basis.minBarDiameter,
        want: 'at least',
        unit: 'm',
        system: ctx.plan.units,
        tells: (v) => `bar of ${v}`,
        limitSource: limitSource(ctx.plan, 'minBarDiameter'),
        source: sources(barSize.source, limitSource(ctx.plan, 'minBarDiameter')),
        advice: 'Ask the engineer of record before anything is tied to these loops.',
      }),
    ),
  explain: (ctx, finding) =>
    rowOf(ctx, finding) && given('Bar diameter', finding.value, 'm', 'the plan', 'd'),
}
