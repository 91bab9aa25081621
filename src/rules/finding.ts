/**
 * A finding: what one rule says about one subject. The fields of the published results contract keep their names.
 */

export type FindingStatus = 'pass' | 'fail' | 'warn' | 'unknown'

export interface Finding {
  /** Id of the rule. */
  rule: string
  /** Id of the line, stanchion, tie-back, loop row, worker or obstacle that it is about. */
  subject: string
  status: FindingStatus
  value: number | null
  limit: number | null
  /** Unit of value, limit and margin: 'm', 'N', 'kg', 'deg', 'ratio', 'count' or ''. */
  unit: string
  text: string
  source: string
  /** The line this finding belongs to, where it belongs to one. */
  line?: string
  /** Signed distance from the limit in the finding's unit; positive is to the good. */
  margin?: number | null
}
