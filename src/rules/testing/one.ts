/** Short ways to what the tests of the rules look at: the first line, stanchion and worker, and one finding. */
import type { RuleContext } from '../context'
import type { Finding } from '../finding'
import { ruleById } from '../index'

/** The finding of a rule, of this subject where one is named. */
export const one = (ctx: RuleContext, rule: string, subject?: string): Finding => {
  const found = ruleById(rule)!
    .check(ctx)
    .filter((f) => subject === undefined || f.subject === subject)
  return found[0]!
}
export const line = (ctx: RuleContext) => ctx.lines[0]!
export const post = (ctx: RuleContext) => line(ctx).stanchions[0]!
export const worker = (ctx: RuleContext) => line(ctx).workers[0]!
