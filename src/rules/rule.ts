/** What a rule is: one question to one kind of subject, and how its answer comes about. */
import type { Explained } from '../solver/explain'
import type { RuleContext } from './context'
import type { Finding } from './finding'

type SubjectKind = 'line' | 'stanchion' | 'tie-back' | 'loop-row' | 'worker' | 'obstacle'

export interface Rule {
  id: string
  subject: SubjectKind
  /** A few words for a list. */
  title: string
  /** What it asks, in one sentence. */
  asks: string
  /** Where the rule is from. */
  source: string
  /** One finding for every subject it applies to. */
  check: (ctx: RuleContext) => Finding[]
  /** The sum behind a finding's value; null where the subject is not there. */
  explain: (ctx: RuleContext, finding: Finding) => Explained | null
}
