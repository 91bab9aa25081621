import { given } from '../solver/explain'
import { engagedText, placeAdvice } from './bracket-place'
import { compare } from './judge'
import type { Rule } from './rule'
import { eachStanchion, stanchionOf } from './subjects'
import { limitSource, plural, sources } from './words'

export const loopsEngaged: Rule = {
  id: 'loops-engaged',
  subject: 'stanchion',
  title: 'Loops on the tube',
  asks: 'Does the bracket’s tube pass through enough loops?',
  source: 'common practice',
  check: (ctx) =>
    eachStanchion(ctx, (s, line) => {
      const { plan } = ctx
      const count = s.engaged.length
      return compare(loopsEngaged, {
        subject: s.stanchion.id,
        line: line.line.id,
        where: `Stanchion ${s.stanchion.id}`,
        value: count,
        limit: plan.basis.minLoopsEngaged,
        want: 'at least',
        unit: 'count',
        system: plan.units,
        tells: () =>
          `${plural(count, 'loop')} on the bracket’s tube${count > 0 ? ` (${engagedText(s)})` : ''}`,
        limitSource: limitSource(plan, 'minLoopsEngaged'),
        source: sources(loopsEngaged.source, limitSource(plan, 'minLoopsEngaged')),
        advice: placeAdvice(plan, s, line),
        remark: s.row === null ? 'No loop row lies within 50 mm of its offset.' : '',
      })
    }),
  explain: (ctx, finding) =>
    stanchionOf(ctx, finding) &&
    given('Loops within half a tube length of the stanchion', finding.value, 'count', 'geometry'),
}
