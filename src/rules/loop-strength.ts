import { derived, given } from '../solver/explain'
import type { StanchionFacts } from './context'
import { told } from './judge'
import type { Rule } from './rule'
import { explainStrength, type Strength, strengthFinding } from './strength'
import { eachStanchion, stanchionOf } from './subjects'
import { limitSource, sources } from './words'

/** The most pulled loop of a bracket that something holds; empty where there is none. */
function parts(s: StanchionFacts): Strength[] {
  if (s.loopPull === null || s.row === null || s.loopCapacity === null || s.engaged.length === 0) return []
  const capacityTree = derived(
    'straightCapacity',
    'Loop pulled straight',
    [
      given('Bar diameter', s.row.barDiameter, 'm', 'the plan', 'd'),
      given('Yield', s.row.yieldStress, 'Pa', 'the plan'),
    ],
    { value: s.loopCapacity },
  )
  const name = 'the most pulled loop'
  return [{ name, capacity: s.loopCapacity, demand: s.loopPull, source: 'bar of the loop row', capacityTree }]
}

const REMARK = 'Pull-out of the concrete is for the engineer of record.'

export const loopStrength: Rule = {
  id: 'loop-strength',
  subject: 'stanchion',
  title: 'Loop strength',
  asks: 'Is a loop, pulled straight, strong enough for the greatest pull of the bracket?',
  source: 'statics, A615 yield',
  check: (ctx) =>
    eachStanchion(ctx, (s, line) => {
      const where = `Stanchion ${s.stanchion.id}`
      const strengths = parts(s)
      if (strengths.length > 0) {
        const subject = { subject: s.stanchion.id, where, line, parts: strengths, remark: REMARK }
        return strengthFinding(loopStrength, ctx, subject)
      }
      const why =
        s.engaged.length === 0
          ? 'no loop is on the bracket’s tube, so nothing holds it down'
          : 'in at least one fall loops and bolts cannot hold the bracket'
      return told(loopStrength, {
        subject: s.stanchion.id,
        line: line.line.id,
        unit: 'ratio',
        source: sources(loopStrength.source, limitSource(ctx.plan, 'safetyFactor')),
        status: 'fail',
        value: null,
        limit: ctx.plan.basis.safetyFactor,
        text: `${where}: ${why}. Move it to where loops stand on both sides.`,
      })
    }),
  explain: (ctx, finding) => {
    const on = stanchionOf(ctx, finding)
    const strengths = on ? parts(on.facts) : []
    return on && strengths.length > 0 ? explainStrength('Loop strength', strengths, on.line) : null
  },
}
