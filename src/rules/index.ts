/** Every rule, in the order in which a reader meets them, and what they say about a plan. */
import type { Explained } from '../solver/explain'
import { absorberRunsOut } from './absorber-runs-out'
import { anchorSpacing } from './anchor-spacing'
import { arrestForce } from './arrest-force'
import { barSize } from './bar-size'
import { boltEdge } from './bolt-edge'
import { connectorRunsOut } from './connector-runs-out'
import type { RuleContext } from './context'
import { deceleration } from './deceleration'
import { endTieBack } from './end-tie-back'
import { eyeOffset } from './eye-offset'
import type { Finding } from './finding'
import { freeFall } from './free-fall'
import { hardwareStrength } from './hardware-strength'
import { lineSlope } from './line-slope'
import { loopSidePull } from './loop-side-pull'
import { loopStrength } from './loop-strength'
import { loopsBeside } from './loops-beside'
import { loopsEngaged } from './loops-engaged'
import { obstacleGap } from './obstacle-gap'
import { rescuePlan } from './rescue-plan'
import { ropeHeld } from './rope-held'
import type { Rule } from './rule'
import { stanchionStrength } from './stanchion-strength'
import { strapLength } from './strap-length'
import { tieBackAngle } from './tie-back-angle'
import { tieBackDistance } from './tie-back-distance'
import { tieBackLoopsAdjacent } from './tie-back-loops-adjacent'
import { tieBackLoopsDistinct } from './tie-back-loops-distinct'
import { tieBackSide } from './tie-back-side'
import { tieBackStrength } from './tie-back-strength'
import { timeMethod } from './time-method'
import { wireRopeStrength } from './wire-rope-strength'
import { workerMass } from './worker-mass'

export type { Finding } from './finding'
export type { Rule } from './rule'

export const rules: readonly Rule[] = [
  anchorSpacing,
  lineSlope,
  endTieBack,
  tieBackAngle,
  tieBackDistance,
  tieBackSide,
  tieBackLoopsDistinct,
  tieBackLoopsAdjacent,
  strapLength,
  tieBackStrength,
  loopsEngaged,
  loopsBeside,
  barSize,
  boltEdge,
  loopStrength,
  loopSidePull,
  stanchionStrength,
  wireRopeStrength,
  hardwareStrength,
  absorberRunsOut,
  ropeHeld,
  eyeOffset,
  freeFall,
  arrestForce,
  deceleration,
  connectorRunsOut,
  workerMass,
  obstacleGap,
  timeMethod,
  rescuePlan,
]

const byRuleId = new Map(rules.map((rule) => [rule.id, rule]))

/** The rule of an id; undefined for one that this program does not know. */
export const ruleById = (id: string): Rule | undefined => byRuleId.get(id)

/** All findings of all rules, one per rule and subject. */
export const findingsOf = (ctx: RuleContext): Finding[] => rules.flatMap((rule) => rule.check(ctx))

/** The sum behind a finding; null where its subject or its number is not there. */
export const explainFinding = (ctx: RuleContext, finding: Finding): Explained | null =>
  ruleById(finding.rule)?.explain(ctx, finding) ?? null
