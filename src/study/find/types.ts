/** What a search for a layout is asked, what it says while it runs, and what it claims in the end. */
import type { LoopRef, Plan } from '../../plan/types'
import type { Finding, LineResults } from '../results'

/** What is made least among layouts with equally few stanchions. */
export type Aim = 'parts' | 'clearance' | 'tension'

export interface FindTask {
  plan: Plan
  /** The line to lay out anew; its parts, crew, offset and temperatures are kept. */
  line: string
  /** Stretch to cover, m along the girder. Absent: from where the line's end stanchions stand now, the nearest fit gaps. */
  from?: number
  to?: number
  /** Part ids (null: no absorber), N; absent or empty: what the line has now. */
  absorbers?: (string | null)[]
  connectors?: string[]
  pretensions?: number[]
  /** How many gaps are tried for each end, outwards from the stretch. */
  ends?: number
  /** How many pairs of tie-back feet are tried at each end, outwards from the nearest that pass. */
  feet?: number
  /** In the order in which they count. */
  aims?: Aim[]
  /** Layouts with falls in time (by energy alone: layouts) for one count and choice before the search says "not proven". */
  tries?: number
  /** Leave the falls in time out of the verification: what then passes is told as by energy only. */
  withoutTime?: boolean
}

/** One selection of parts. */
export interface Choice {
  absorber: string | null
  /** null: every worker keeps their own. */
  connector: string | null
  pretension: number
}

export interface Feet {
  strapLoop: LoopRef
  tensionerLoop: LoopRef
}

/** A layout: gaps by their index in `Places.stations`. */
export interface Layout {
  gaps: number[]
  /** Stations of the stanchions, m. */
  stations: number[]
  feet: [Feet, Feet]
  choice: Choice
}

/** The finding nearest to its limit. */
export interface Limiting {
  rule: string
  subject: string
  text: string
  /** Margin as a share of the limit. */
  share: number
}

export interface Candidate {
  layout: Layout
  stanchions: number
  parts: number
  /** Greatest clearance needed below the walking surface, m, and greatest tension, N. */
  clearance: number | null
  tension: number | null
  governing: LineResults['governing']
  /** Least gap to an obstacle that shares plan area, m. */
  gap: number | null
  limiting: Limiting[]
  /** Findings to look at that do not fail. */
  warnings: Finding[]
  /** By energy alone, or with the falls in time. */
  verified: 'energy' | 'time'
}

/** Why something fails: the rule, how often it was met, and one sentence with its figures. */
export interface Reason {
  rule: string
  text: string
}

/** What is known about layouts with one count of stanchions. */
export interface CountReport {
  stanchions: number
  status: 'passes' | 'none passes' | 'not proven'
  /** Layouts studied whole. */
  studied: number
  reasons: Reason[]
}

export interface FindResult {
  outcome: 'found' | 'none' | 'stopped'
  best: Candidate | null
  /** Passing layouts worth comparing, the best first. */
  alternatives: Candidate[]
  counts: CountReport[]
  claims: Claims
  /** What the search looked at, in words: the claims hold within this. */
  space: string[]
  /** Why no layout at all can pass, where that is so. */
  reasons: Reason[]
}

export interface Claims {
  /** No layout with fewer stanchions passes. */
  fewest: 'proven' | 'not proven'
  /** No layout with as few stanchions is better in the aims' order (within the stated closeness). */
  least: 'proven' | 'not proven'
}

export interface FindProgress {
  doing: string
  /** 0 to 1, a rough share. */
  done: number
  stanchions: number | null
  studied: number
  best: Candidate | null
  counts: CountReport[]
}
