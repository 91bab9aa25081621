import { derived, found } from '../solver/explain'
import { isKnown, type Known, type LineFacts } from './context'
import { compare } from './judge'
import type { Rule } from './rule'
import { eachLine, lineOf } from './subjects'
import { say } from './words'

/** Above this the difference is told as a warning: a threshold of ours, no limit of a standard. */
const TOLD_ABOVE = 1.2

function ratio(facts: LineFacts): Known {
  if (!isKnown(facts.timeTension)) return facts.timeTension
  if (!isKnown(facts.energyTension)) return facts.energyTension
  if (!(facts.energyTension > 0)) return { unknown: 'the energy method gives no tension' }
  return facts.timeTension / facts.energyTension
}

const number = (value: Known): number => (isKnown(value) ? value : Number.NaN)

export const timeMethod: Rule = {
  id: 'time-method',
  subject: 'line',
  title: 'Both methods',
  asks: 'How much more tension does the fall in time give than the energy method? Told always.',
  source:
    'a threshold of ours; published drop tests found static methods mostly on the high side (by at most 17 % in 42 tests)',
  check: (ctx) =>
    eachLine(ctx, (facts) => {
      const { units } = ctx.plan
      return compare(timeMethod, {
        subject: facts.line.id,
        line: facts.line.id,
        where: facts.line.name,
        value: ratio(facts),
        limit: TOLD_ABOVE,
        want: 'at most',
        unit: 'ratio',
        system: units,
        tells: (v) =>
          `greatest tension ${say(number(facts.timeTension), 'N', units)} in time over ${say(number(facts.energyTension), 'N', units)} by energy is ${v}`,
        what: 'tension in time over tension by energy',
        limitSource: 'a threshold of ours',
        source: timeMethod.source,
        remark: 'The greater of the two governs.',
        otherwise: 'warn',
      })
    }),
  explain: (ctx, finding) => {
    const facts = lineOf(ctx, finding)
    if (!facts) return null
    const node = (label: string, value: Known, method: string) =>
      found(label, isKnown(value) ? value : null, 'N', method)
    const parts = [
      node('Greatest tension in time', facts.timeTension, 'lumped masses, greatest mean over 5 ms'),
      node('Greatest tension by energy', facts.energyTension, 'energy balance on the line law'),
    ]
    return derived('ratio', 'Tension in time over tension by energy', parts, { unit: 'ratio' })
  },
}
